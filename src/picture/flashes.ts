/**
 * General flashes as WCAG 2.2 has them (success criterion 2.3.1 and "general flash and red flash thresholds"): a flash
 * is a pair of opposing changes in relative luminance of 0.1 or more, the darker of the two below 0.8. More than three
 * within one second are too many, over more than a quarter of any 341x256 pixels of a screen of 1024x768.
 *
 * Pixels need not touch to be counted together here: so nothing that the criterion calls a flash is missed.
 */

/** In pixels of a screen that the frame fills in width or in height. */
export const screen = { width: 1024, height: 768, field: { width: 341, height: 256 }, part: 1 / 4 } as const;

/** Sees the frames one after the other, without those equal to the previous one. */
export interface FlashMeter {
  /** `luminance`: 0 to 1 per pixel, rows from the top. True if more than three flashes end within the last second. */
  readonly see: (frame: number, luminance: Float32Array) => boolean;
}

const step = 0.1;
const darkest = 0.8;
/** Three flashes are six changes to and fro; the eighth makes a fourth flash whole. */
const tooMany = 8;

/** A meter for frames of this size, which stand for a screen of `scale` times as many pixels each way. */
export function flashMeter(width: number, height: number, scale: number, framesPerSecond: number): FlashMeter {
  const size = width * height;
  const field = {
    width: Math.min(width, Math.round(screen.field.width / scale)),
    height: Math.min(height, Math.round(screen.field.height / scale)),
  };
  const least = ((screen.field.width * screen.field.height) / (scale * scale)) * screen.part;
  // Since the last change: its direction, and the extreme reached in it.
  const extreme = new Float32Array(size);
  const way = new Int8Array(size);
  const changes: number[][] = Array.from({ length: size }, () => []);
  const hot = new Uint8Array(size);
  let isFirst = true;

  const change = (pixel: number, to: number, frame: number) => {
    const from = extreme[pixel]!;
    way[pixel] = to > from ? 1 : -1;
    extreme[pixel] = to;
    const own = changes[pixel]!;
    own.push(frame);
    if (own.length > tooMany) own.shift();
  };
  return {
    see(frame, luminance) {
      if (isFirst) {
        extreme.set(luminance);
        isFirst = false;
        return false;
      }
      for (let pixel = 0; pixel < size; pixel++) {
        const [now, before] = [luminance[pixel]!, extreme[pixel]!];
        const goesOn = (now - before) * way[pixel]! > 0;
        if (goesOn) extreme[pixel] = now;
        else if (Math.abs(now - before) >= step - 1e-6 && Math.min(now, before) < darkest) change(pixel, now, frame);
      }
      // A field need not flash all over in one frame: everything that flashed within the second counts.
      return mostIn(recent(frame)) > least;
    },
  };

  function recent(frame: number): Uint8Array {
    for (let pixel = 0; pixel < size; pixel++) {
      const own = changes[pixel]!;
      hot[pixel] = own.length === tooMany && frame - own[0]! <= framesPerSecond ? 1 : 0;
    }
    return hot;
  }

  /** The most pixels of any field, by sums over the rectangles from the top left. */
  function mostIn(pixels: Uint8Array): number {
    const sums = new Uint32Array((width + 1) * (height + 1));
    for (let y = 0; y < height; y++) {
      let row = 0;
      for (let x = 0; x < width; x++) {
        row += pixels[y * width + x]!;
        sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1]! + row;
      }
    }
    const at = (x: number, y: number) => sums[y * (width + 1) + x]!;
    let most = 0;
    for (let y = field.height; y <= height; y++) {
      for (let x = field.width; x <= width; x++) {
        const inside =
          at(x, y) - at(x - field.width, y) - at(x, y - field.height) + at(x - field.width, y - field.height);
        most = Math.max(most, inside);
      }
    }
    return most;
  }
}
