/** Choices of a few items from many, in the order of the many. */

/** Every choice of `count` of these, lazily, in lexicographic order of their places. */
export function* combinations<T>(from: readonly T[], count: number): Generator<readonly T[]> {
  const places = Array.from({ length: count }, (_, index) => index);
  if (count > from.length) return;
  for (;;) {
    yield places.map((place) => from[place]!);
    let turning = count - 1;
    while (turning >= 0 && places[turning] === from.length - count + turning) turning--;
    if (turning < 0) return;
    places[turning]!++;
    for (let after = turning + 1; after < count; after++) places[after] = places[after - 1]! + 1;
  }
}
