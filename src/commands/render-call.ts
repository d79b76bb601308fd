/**
 * What a call of `render` asks for, read and held against itself before anything is opened.
 */
import { basename, extname } from 'node:path';
import type { Share } from '../output/segments/parts.ts';
import { compare, divide, type Fraction, fraction, fractionFromDecimal, toNumber, zero } from '../scene/fraction.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { BadCall } from './bad-call.ts';

export interface RenderCall {
  readonly out?: string;
  readonly stamp?: boolean;
  readonly key?: string;
  readonly lossless?: boolean;
  readonly png?: boolean;
  readonly compatible?: boolean;
  readonly holds?: boolean;
  readonly matte?: boolean;
  readonly steps?: string;
  readonly by?: string;
  readonly handles?: string;
  readonly scale?: string;
  readonly format?: string;
  readonly part?: string;
  readonly look?: string;
  readonly as?: string;
  /** False with --no-cache. */
  readonly cache?: boolean;
  readonly quiet?: boolean;
}

export type Format = 'mp4' | 'mov' | 'webm' | 'png';

export interface RenderPlan {
  readonly out: string;
  /** Whether `out` is a folder of several videos. */
  readonly several: boolean;
  readonly format: Format | undefined;
  /** The ids of the first and the last step; `last` undefined: to the end. Undefined: the whole film. */
  readonly steps: { readonly first: string; readonly last: string | undefined } | undefined;
  readonly byStep: boolean;
  /** Seconds before and after each step. */
  readonly handles: Fraction;
  /** Of both sides of the frame. */
  readonly scale: number;
  readonly part: Share | undefined;
}

/** @throws BadCall where the call asks for what cannot be, or for two things that exclude each other */
export function readRenderCall(scenes: readonly string[], call: RenderCall): RenderPlan {
  const { out } = call;
  if (out === undefined) throw new BadCall('render needs -o OUT: a .mp4, .mov or .webm, or a folder for PNG frames');
  const byStep = readBy(call.by);
  const several = byStep || scenes.length > 1;
  const format = readFormat(call.format);
  if (several) refuseFileName(out, byStep);
  if (!several && format !== undefined)
    throw new BadCall(
      '--format is for several videos; of a single one the name says it: -o OUT.mp4, OUT.mov, OUT.webm or a folder',
    );
  if (call.handles !== undefined && !byStep)
    throw new BadCall('--handles lengthens the videos of --by step; add that, or leave it out');
  refuseTwins(scenes);
  refuseMatte(call, out, several, format);
  return {
    out,
    several,
    format,
    steps: call.steps === undefined ? undefined : readSteps(call.steps),
    byStep,
    handles: call.handles === undefined ? zero : readHandles(call.handles),
    scale: call.scale === undefined ? 1 : readScale(call.scale),
    part: call.part === undefined ? undefined : readPart(call.part, call, several),
  };
}

function readBy(by: string | undefined): boolean {
  if (by !== undefined && by !== 'step') throw new BadCall(`--by ${by}: videos can be had one a step alone, --by step`);
  return by !== undefined;
}

/** `2/8`. */
function readPart(text: string, { matte }: RenderCall, several: boolean): Share {
  const match = /^(\d{1,4})\/(\d{1,4})$/.exec(text.trim());
  const [number, of] = [Number(match?.[1]), Number(match?.[2])];
  if (match === null || number < 1 || number > of)
    throw new BadCall(`--part ${text}: write the part's number and how many there are, such as 2/8`);
  if (several)
    throw new BadCall('--part is of one video; where there are several, let each machine render some of them');
  if (matte === true) throw new BadCall('--part and --matte exclude each other, since a part is of one video');
  return { number, of };
}

const formats: readonly Format[] = ['mp4', 'mov', 'webm', 'png'];

function readFormat(text: string | undefined): Format | undefined {
  if (text === undefined) return undefined;
  const found = formats.find((format) => format === text.replace(/^\./, '').toLowerCase());
  if (found !== undefined) return found;
  const [nearest] = nearestWords(text, formats);
  throw new BadCall(
    `--format ${text}: ${nearest === undefined ? 'there are mp4, mov, webm and png' : `did you mean ${nearest}?`}`,
  );
}

function refuseFileName(out: string, byStep: boolean): void {
  const ending = extname(out).toLowerCase();
  if (!['.mp4', '.mov', '.webm', '.png'].includes(ending)) return;
  const why = byStep ? '--by step writes a video for each step' : 'several scenes give several videos';
  const folder = out.slice(0, -ending.length);
  throw new BadCall(`${why}, so -o names a folder: -o ${folder}/ --format ${ending.slice(1)}`);
}

/** Two scenes of one name in two folders would be written over each other. */
function refuseTwins(scenes: readonly string[]): void {
  const seen = new Map<string, string>();
  for (const scene of scenes) {
    const name = nameOf(scene);
    const other = seen.get(name);
    if (other !== undefined)
      throw new BadCall(`${other} and ${scene} would both be written as ${name}; render them one by one`);
    seen.set(name, scene);
  }
}

/** What a video of this scene is called in a folder of several. */
export function nameOf(scene: string): string {
  return basename(scene, extname(scene));
}

function refuseMatte({ matte, key }: RenderCall, out: string, several: boolean, format: Format | undefined): void {
  if (matte !== true) return;
  if (key !== undefined)
    throw new BadCall('--matte and --key are two ways of saying what is transparent; give one of them');
  const isFrames = several ? format === 'png' : !['.mp4', '.mov', '.webm'].includes(extname(out).toLowerCase());
  if (isFrames) throw new BadCall('--matte is for videos; PNG frames carry their transparency themselves');
}

/** `towers`, `towers..corner`, `towers..`. */
function readSteps(text: string): { readonly first: string; readonly last: string | undefined } {
  const match = /^([A-Za-z0-9-]+)(?:(\.\.)([A-Za-z0-9-]*))?$/.exec(text.trim());
  if (match === null)
    throw new BadCall(
      `--steps ${text}: write the id of one step, or of two with .. between them, such as towers..corner`,
    );
  const [, first = '', dots, last = ''] = match;
  return { first, last: dots === undefined ? first : last === '' ? undefined : last };
}

/** `1s`, `1`, `0.5s`. */
function readHandles(text: string): Fraction {
  const seconds = fractionFromDecimal(text.trim().replace(/s$/, ''));
  if (seconds === undefined || compare(seconds, zero) < 0)
    throw new BadCall(`--handles ${text}: write seconds, such as 1s or 0.5s`);
  return seconds;
}

/** `1/4`, `0.25`. */
function readScale(text: string): number {
  const [top, bottom, ...more] = text.split('/').map((part) => fractionFromDecimal(part.trim()));
  const isFraction = top !== undefined && more.length === 0 && (!text.includes('/') || bottom !== undefined);
  const under = bottom ?? fraction(1n);
  if (!isFraction || compare(under, zero) <= 0 || compare(top, zero) <= 0 || compare(top, under) > 0)
    throw new BadCall(`--scale ${text}: write a part of the frame's sides, above 0 and at most 1, such as 1/4`);
  return toNumber(divide(top, under));
}
