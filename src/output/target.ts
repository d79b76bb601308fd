/**
 * What a name asks for: `lesson.mp4`, `lesson.mov`, `lesson.webm`, or a folder of PNG frames (`frames/`, or a name
 * without an ending). What is impossible is refused before any work is done, with what is possible instead.
 */
import { basename, extname, resolve } from 'node:path';
import { type CodecName, codecs, usualCodec } from './codecs/codecs.ts';
import { type Container, containers } from './containers/track.ts';
import { pathFault, type Refusal, statusOf } from './machine/output-path.ts';
import type { Painter } from './painters/painter.ts';

/** Paths are absolute. */
export type Target =
  | { readonly kind: 'frames'; readonly folder: string }
  | { readonly kind: 'video'; readonly file: string; readonly container: Container; readonly codec: CodecName };

export interface TargetWishes {
  /** Lossless: qtrle in a .mov, or PNG frames. */
  readonly lossless: boolean;
  /** A .mov of PNG pictures, which is also lossless. */
  readonly png: boolean;
  /** A codec other than the container's usual one. */
  readonly codec?: CodecName | undefined;
  /** `#rrggbb`, put under every frame. */
  readonly key: string | undefined;
  /** There is footage to put under the frames. */
  readonly footage: boolean;
}

export function targetOf(name: string, painter: Painter, wishes: TargetWishes): Target | Refusal {
  const target = targetNamed(name, wishes);
  if (target.kind === 'refused') return target;
  const message = placeFault(target) ?? keyFault(wishes.key) ?? carryFault(name, target, painter, wishes);
  return message === undefined ? target : { kind: 'refused', message };
}

/** The fault of a key colour that is not `#rrggbb`; undefined if there is none. */
export function keyFault(key: string | undefined): string | undefined {
  if (key === undefined || /^#[0-9a-f]{6}$/i.test(key)) return undefined;
  return `the key colour '${key}' is not a colour of six hexadecimal digits, such as '#00b140'`;
}

/**
 * The fault of a video that would overwrite what it is made from, following links; undefined if there is none. A
 * recording cannot be made again.
 */
export function sourceFault(
  target: Target,
  sources: { readonly footage: string | undefined; readonly audio: string | undefined },
): string | undefined {
  if (target.kind !== 'video') return undefined;
  const written = statusOf(target.file);
  for (const [what, file] of Object.entries(sources)) {
    const source = file === undefined ? undefined : statusOf(file);
    if (source === undefined || written === undefined) continue;
    if (source.ino !== written.ino || source.dev !== written.dev) continue;
    return `'${basename(target.file)}' is the scene's own ${what}, which would be overwritten; give another name`;
  }
  return undefined;
}

function placeFault(target: Target): string | undefined {
  if (target.kind === 'frames') return pathFault(target.folder);
  if (isFolder(target.file)) return `'${basename(target.file)}' is a folder; give the name of a file`;
  return pathFault(target.file);
}

function targetNamed(name: string, wishes: TargetWishes): Target | Refusal {
  const path = resolve(name);
  const ending = extname(name).toLowerCase();
  if (name === '') return { kind: 'refused', message: `an empty name; ${choices}` };
  if (/[/\\]$/.test(name) || ending === '') return { kind: 'frames', folder: path };
  const container = containers.find((one) => ending === `.${one}`);
  if (container !== undefined) {
    return { kind: 'video', file: path, container, codec: wishedCodec(wishes) ?? usualCodec[container] };
  }
  if (isFolder(path)) return { kind: 'frames', folder: path };
  return { kind: 'refused', message: `'${basename(name)}' ends in ${ending}, which cannot be written; ${choices}` };
}

function wishedCodec({ lossless, png, codec }: TargetWishes): CodecName | undefined {
  return png ? 'png' : lossless ? 'qtrle' : codec;
}

function carryFault(name: string, target: Target, painter: Painter, wishes: TargetWishes): string | undefined {
  if (wishes.codec !== undefined && (wishes.png || wishes.lossless)) {
    return `${codecs[wishes.codec].option} and ${wishes.png ? '--png' : '--lossless'} ask for two picture formats; give only one of them`;
  }
  if (target.kind === 'frames') {
    if (wishes.codec === undefined) return undefined;
    return `${codecs[wishes.codec].title} is for a video, and this is a folder of PNG frames; name ${videosOf(wishes.codec)}`;
  }
  const { container, codec } = target;
  if (wishes.png && container !== 'mov') {
    return `--png is for a .mov, and a .${container} cannot contain PNG pictures; write a .mov, or a folder of PNG frames (${folderLike(name)})`;
  }
  if (wishes.lossless && container !== 'mov') {
    return `a .${container} loses a little of each frame; for a lossless picture write a .mov, or a folder of PNG frames (${folderLike(name)})`;
  }
  const { title, option, holders, carriesAlpha, evenSides } = codecs[codec];
  if (holders[container] === undefined) {
    return `a .${container} is not written with ${title}; name ${videosOf(codec)}`;
  }
  const isUsual = codec === usualCodec[container];
  if (wishes.footage && container === 'mp4' && !isUsual && wishes.key === undefined) {
    return `a video over footage is made only with ${codecs[usualCodec.mp4].title}; leave out ${option}`;
  }
  if (!carriesAlpha && !isUsual && painter.transparent && wishes.key === undefined) {
    return `${title} carries no transparency, and these frames are an overlay: give a key colour (--key '#00b140'), or leave out ${option}`;
  }
  if (painter.transparent && !carriesAlpha && wishes.key === undefined && !wishes.footage) {
    return (
      `an .mp4 carries no transparency, and these frames are an overlay: give the footage that it lies over, ` +
      `or a key colour (--key '#00b140'), or write a .mov, a .webm or a folder of PNG frames (${folderLike(name)}), which carry it`
    );
  }
  if (evenSides && (painter.width % 2 === 1 || painter.height % 2 === 1)) {
    const even = `${painter.width + (painter.width % 2)}x${painter.height + (painter.height % 2)}`;
    if (!isUsual)
      return `${title} needs an even width and height, and the frames are ${painter.width}x${painter.height}: make them ${even}, or leave out ${option}`;
    return `an .mp4 needs an even width and height, and the frames are ${painter.width}x${painter.height}: make them ${even}, or write a .mov, a .webm or a folder of PNG frames`;
  }
  return undefined;
}

/** `a .mp4 or .webm`. */
function videosOf(codec: CodecName): string {
  return `a ${containers
    .filter((one) => codecs[codec].holders[one] !== undefined)
    .map((one) => `.${one}`)
    .join(' or ')}`;
}

function folderLike(name: string): string {
  return `${name.slice(0, name.length - extname(name).length)}/`;
}

function isFolder(path: string): boolean {
  return statusOf(path)?.isDirectory() ?? false;
}

const choices = 'name a .mp4, .mov or .webm, or a folder for PNG frames (frames/)';
