/**
 * PNG pictures, made by the canvas itself: lossless, and one that stands is repeated.
 */
import type { Codec, Packet } from './codec.ts';

export function png(width: number, height: number): Codec {
  return {
    encoder: undefined,
    format: 'png',
    recipe: JSON.stringify(['png 1', width, height]),
    stillPictures: 1,
    keyEvery: Number.POSITIVE_INFINITY,
    bytesPerPixel: 1,
    takesSeveral: true,
    secondsPerMegapixel: 0.04,
    async encode({ pictures, signal }) {
      const packets: Packet[] = [];
      for (let next = pictures.next(); next.done !== true; next = pictures.next()) {
        packets.push({ bytes: next.value, key: true });
        await untilOthersHadTheirTurn();
        signal?.throwIfAborted();
      }
      return { config: new Uint8Array(), packets };
    },
    hold: () => undefined,
  };
}

/** An interrupt is only noticed when the process rests for a moment. */
export function untilOthersHadTheirTurn(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}
