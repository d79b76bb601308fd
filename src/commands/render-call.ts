/**
 * What a call of `render` asks for as a whole: the combination of its options, before anything is opened.
 */
import { basename, extname } from 'node:path';
import type { Share } from '../output/parts/parts.ts';
import { type Fraction, zero } from '../scene/fraction.ts';
import type { render } from '../verbs/render.ts';
import type { Format, StepRange } from '../verbs/render-values.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';

export type RenderCall = CallOf<typeof render>;

export interface RenderPlan {
  readonly out: string;
  /** Whether `out` is a folder of several videos. */
  readonly several: boolean;
  readonly format: Format | undefined;
  /** Undefined: the whole film. */
  readonly steps: StepRange | undefined;
  readonly byStep: boolean;
  /** Seconds before and after each step. */
  readonly handles: Fraction;
  /** Factor for both sides of the frame. */
  readonly scale: number;
  readonly part: Share | undefined;
}

/** @throws UsageError if the call asks for something impossible, or for two things that exclude each other */
export function planOf(call: RenderCall): RenderPlan {
  const { out, scenes, steps, format, scale = 1, part } = call;
  const byStep = call.by === 'step';
  const several = byStep || scenes.length > 1;
  if (several) refuseFileName(out, byStep);
  if (!several && format !== undefined)
    throw new UsageError(
      '--format is for several videos; for a single one the name says it: -o OUT.mp4, OUT.mov, OUT.webm or a folder',
    );
  if (call.handles !== undefined && !byStep)
    throw new UsageError('--handles lengthens the videos of --by step; add that, or leave it out');
  refuseTwins(scenes);
  refuseMatte(call, several);
  if (part !== undefined) refusePart(call, several);
  return { out, several, format, steps, byStep, handles: call.handles ?? zero, scale, part };
}

function refusePart({ matte }: RenderCall, several: boolean): void {
  if (several)
    throw new UsageError('--part is for one video; if there are several, let each machine render some of them');
  if (matte) throw new UsageError('--part and --matte exclude each other, since a part belongs to one video');
}

function refuseFileName(out: string, byStep: boolean): void {
  const ending = extname(out).toLowerCase();
  if (!['.mp4', '.mov', '.webm', '.png'].includes(ending)) return;
  const why = byStep ? '--by step writes a video for each step' : 'several scenes give several videos';
  const folder = out.slice(0, -ending.length);
  throw new UsageError(`${why}, so -o names a folder: -o ${folder}/ --format ${ending.slice(1)}`);
}

/** Two scenes of one name in two folders would overwrite each other. */
function refuseTwins(scenes: readonly string[]): void {
  const seen = new Map<string, string>();
  for (const scene of scenes) {
    const name = nameOf(scene);
    const other = seen.get(name);
    if (other !== undefined)
      throw new UsageError(`${other} and ${scene} would both be written as ${name}; render them one by one`);
    seen.set(name, scene);
  }
}

/** What a video of this scene is called in a folder of several. */
export function nameOf(scene: string): string {
  return basename(scene, extname(scene));
}

function refuseMatte({ matte, key, out, format }: RenderCall, several: boolean): void {
  if (!matte) return;
  if (key !== undefined)
    throw new UsageError('--matte and --key are two ways of saying what is transparent; give one of them');
  const isFrames = several ? format === 'png' : !['.mp4', '.mov', '.webm'].includes(extname(out).toLowerCase());
  if (isFrames) throw new UsageError('--matte is for videos; PNG frames carry their own transparency');
}
