/** The part of culori 4.0.2 that the tests use; colours are `#rrggbb`. */
declare module 'culori' {
  /** What a filter gives back is a colour object, which the other functions take as well. */
  type Colour = string | { readonly mode: string };
  export function wcagContrast(a: Colour, b: Colour): number;
  export function differenceCiede2000(): (a: Colour, b: Colour) => number;
  export function filterDeficiencyProt(severity: number): (colour: string) => Colour;
  export function filterDeficiencyDeuter(severity: number): (colour: string) => Colour;
  export function filterDeficiencyTrit(severity: number): (colour: string) => Colour;
}
