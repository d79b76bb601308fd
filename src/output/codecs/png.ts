/**
 * PNG pictures, made by the canvas itself: lossless; a held picture is repeated.
 */
import type { Packet } from '../containers/track.ts';
import type { Codec, CodecFilm, CodecRecord } from './codec.ts';

export const png: CodecRecord = {
  title: 'PNG',
  option: '--png',
  encoder: undefined,
  decoder: undefined,
  holders: { mov: { entry: 'png ', compressor: 'PNG', configBox: undefined, isLuma: false } },
  carriesAlpha: true,
  evenSides: false,
  make: codecFor,
};

function codecFor({ width, height }: CodecFilm): Codec {
  return {
    format: 'png',
    recipe: JSON.stringify(['png 1', width, height]),
    holdPictures: 1,
    keyEvery: Number.POSITIVE_INFINITY,
    bytesPerPixel: 1,
    takesSeveral: true,
    secondsPerMegapixel: 0.04,
    repeatIsDecoded: true,
    asDrawn: [],
    async encode({ pictures, signal }) {
      const packets: Packet[] = [];
      for (let next = pictures.next(); next.done !== true; next = pictures.next()) {
        packets.push({ bytes: next.value, key: true });
        await untilOthersHadTheirTurn();
        signal?.throwIfAborted();
      }
      return { config: new Uint8Array(), packets };
    },
    repeat: () => undefined,
  };
}

/** An interrupt is only noticed when the event loop gets a turn. */
export function untilOthersHadTheirTurn(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}
