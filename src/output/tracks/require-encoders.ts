/**
 * Whether this ffmpeg has the encoders that a file needs, checked before any work.
 */
import { type CodecName, codecs } from '../codecs/codecs.ts';
import { type Container, containers } from '../containers/track.ts';
import { availableEncoders, howToGet } from '../ffmpeg/ffmpeg.ts';
import { MachineFailure } from '../machine/machine-failure.ts';
import { sounds } from './sound.ts';

/** What a video needs. */
export function encodersFor(codec: CodecName, container: Container, hasSound: boolean): readonly string[] {
  const { encoder } = codecs[codec];
  return [...(encoder === undefined ? [] : [encoder]), ...(hasSound ? [sounds[container].encoder] : [])];
}

/**
 * Throws a `MachineFailure` that says what is missing, what can still be written, and what to install, unless ffmpeg
 * and ffprobe exist and ffmpeg has these encoders.
 */
export async function requireEncoders(names: readonly string[]): Promise<void> {
  const found = await availableEncoders();
  const missing = names.filter((name) => !found.has(name));
  if (missing.length === 0) return;
  const others = kindsOfFile().filter(({ needs }) => needs.every((name) => found.has(name)));
  const instead = [...others.map(({ kind }) => kind), 'a folder of PNG frames'];
  const can = instead.length === 1 ? instead[0] : `${instead.slice(0, -1).join(', ')} or ${instead.at(-1)}`;
  throw new MachineFailure(
    `this ffmpeg was built without ${missing.join(' and ')}; with it you can write ${can}, or ${howToGet}`,
  );
}

/** Every kind of file, and what it needs, including sound. Those of one container with the same needs are merged. */
function kindsOfFile(): readonly { readonly kind: string; readonly needs: readonly string[] }[] {
  return containers.flatMap((container) => {
    const optionsOf = new Map<string | undefined, string[]>();
    for (const { holders, encoder, option } of Object.values(codecs)) {
      if (holders[container] === undefined) continue;
      optionsOf.set(encoder, [...(optionsOf.get(encoder) ?? []), ...(option === undefined ? [] : [option])]);
    }
    return [...optionsOf].map(([encoder, options]) => ({
      kind: `a .${container}${options.length === 0 ? '' : ` with ${options.join(' or ')}`}`,
      needs: [...(encoder === undefined ? [] : [encoder]), sounds[container].encoder],
    }));
  });
}
