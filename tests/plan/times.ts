/** A search that ends after a number of questions is the same on every machine; one that ends by the clock is not. */
export function times(count: number): () => boolean {
  let left = count;
  return () => --left > 0;
}
