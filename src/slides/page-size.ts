/**
 * The sizes that pages and slides may have.
 *
 * A4: ISO 216, 210 x 297 mm. Letter: ANSI Y14.1, 8.5 x 11 in. Slides of 16:9 and 4:3 are 7.5 in high (common practice
 * of office programs). A point is 1/72 in.
 */

export const sizeNames = ['16:9', '4:3', 'A4', 'Letter'] as const;
export type SizeName = (typeof sizeNames)[number];

export interface PageSize {
  readonly name: SizeName;
  /** In whole points, in the orientation used. */
  readonly width: number;
  readonly height: number;
}

/** A slide: landscape, on paper too. */
export function slideSize(name: SizeName): PageSize {
  return { name, ...landscape[name] };
}

/** A handout page: portrait; sizes that are not paper sizes are printed on A4. */
export function handoutSize(name: SizeName | undefined): PageSize {
  const paper = name === 'Letter' ? 'Letter' : 'A4';
  const { width, height } = landscape[paper];
  return { name: paper, width: height, height: width };
}

const landscape: Readonly<Record<SizeName, { readonly width: number; readonly height: number }>> = {
  '16:9': { width: 960, height: 540 },
  '4:3': { width: 720, height: 540 },
  A4: { width: 842, height: 595 },
  Letter: { width: 792, height: 612 },
};

/** Pages are laid out in units; the shorter side has this many. */
export const shorterSide = 1080;

/** Width and height in units of the layout, and how many points a unit is. */
export function layoutSize({ width, height }: PageSize): {
  readonly width: number;
  readonly height: number;
  readonly points: number;
} {
  const points = Math.min(width, height) / shorterSide;
  return { width: width / points, height: height / points, points };
}
