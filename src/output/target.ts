/**
 * What a name asks for: `lesson.mp4`, `lesson.mov`, `lesson.webm`, or a folder of PNG frames (`frames/`, or a name
 * without an ending). What cannot be had is refused before any work is done, with what can be had instead.
 */
import { type Stats, statSync } from 'node:fs';
import { basename, dirname, extname, resolve } from 'node:path';
import type { Painter } from './painters/painter.ts';

export type Container = 'mp4' | 'mov' | 'webm';

/** How the frames of a file are compressed. Nothing is lost by qtrle and PNG, a little by the others. */
export type Codec = 'h264' | 'prores' | 'qtrle' | 'png' | 'vp9';

/** Paths are absolute. */
export type Target =
  | { readonly kind: 'frames'; readonly folder: string }
  | { readonly kind: 'video'; readonly file: string; readonly container: Container; readonly codec: Codec };

/** The call asks for something that cannot be; `message` says what, and what can be had. Exit status 2. */
export interface Refusal {
  readonly kind: 'refused';
  readonly message: string;
}

export interface TargetWishes {
  /** Nothing may be lost: qtrle in a .mov, or PNG frames. */
  readonly lossless: boolean;
  /** A .mov of PNG pictures, by which nothing is lost either. */
  readonly png: boolean;
  /** `#rrggbb`, laid under every frame. */
  readonly key: string | undefined;
  /** There is footage to lay under the frames. */
  readonly footage: boolean;
}

export function targetOf(name: string, painter: Painter, wishes: TargetWishes): Target | Refusal {
  const target = targetNamed(name, wishes);
  if (target.kind === 'refused') return target;
  const message = placeFault(target) ?? keyFault(wishes.key) ?? carryFault(name, target, painter, wishes);
  return message === undefined ? target : { kind: 'refused', message };
}

/** The fault of a key colour that is not `#rrggbb`; undefined where there is none. */
export function keyFault(key: string | undefined): string | undefined {
  if (key === undefined || /^#[0-9a-f]{6}$/i.test(key)) return undefined;
  return `the key colour '${key}' is not a colour of six hexadecimal digits, such as '#00b140'`;
}

/** The fault of a path that leads through a file as if it were a folder; undefined where there is none. */
export function pathFault(path: string): string | undefined {
  for (let at = dirname(path); ; at = dirname(at)) {
    const there = found(at);
    if (there?.isDirectory() === true || dirname(at) === at) return undefined;
    if (there !== undefined) return `'${basename(at)}' is a file, so nothing can be written into it`;
  }
}

/**
 * The fault of a video that would be written over what it is made from, links followed; undefined where there is none.
 * A recording cannot be made again.
 */
export function sourceFault(
  target: Target,
  sources: { readonly footage: string | undefined; readonly audio: string | undefined },
): string | undefined {
  if (target.kind !== 'video') return undefined;
  const written = found(target.file);
  for (const [what, file] of Object.entries(sources)) {
    const source = file === undefined ? undefined : found(file);
    if (source === undefined || written === undefined) continue;
    if (source.ino !== written.ino || source.dev !== written.dev) continue;
    return `'${basename(target.file)}' is the scene's own ${what}, which would be written over; give another name`;
  }
  return undefined;
}

function placeFault(target: Target): string | undefined {
  if (target.kind === 'frames') return pathFault(target.folder);
  if (isFolder(target.file)) return `'${basename(target.file)}' is a folder; give the name of a file`;
  return pathFault(target.file);
}

function targetNamed(name: string, { lossless, png }: TargetWishes): Target | Refusal {
  const path = resolve(name);
  const ending = extname(name).toLowerCase();
  if (name === '') return { kind: 'refused', message: `an empty name; ${choices}` };
  if (/[/\\]$/.test(name) || ending === '') return { kind: 'frames', folder: path };
  if (ending === '.mp4') return { kind: 'video', file: path, container: 'mp4', codec: 'h264' };
  if (ending === '.mov') {
    return { kind: 'video', file: path, container: 'mov', codec: png ? 'png' : lossless ? 'qtrle' : 'prores' };
  }
  if (ending === '.webm') return { kind: 'video', file: path, container: 'webm', codec: 'vp9' };
  if (isFolder(path)) return { kind: 'frames', folder: path };
  return { kind: 'refused', message: `'${basename(name)}' ends in ${ending}, which cannot be written; ${choices}` };
}

function carryFault(name: string, target: Target, painter: Painter, wishes: TargetWishes): string | undefined {
  if (target.kind === 'frames') return undefined;
  const { container } = target;
  if (wishes.png && container !== 'mov') {
    return `--png is for a .mov, and a .${container} holds no PNG pictures; write a .mov, or a folder of PNG frames (${folderLike(name)})`;
  }
  if (wishes.lossless && container !== 'mov') {
    return `a .${container} loses a little of each frame; for a lossless picture write a .mov, or a folder of PNG frames (${folderLike(name)})`;
  }
  if (container !== 'mp4') return undefined;
  if (painter.transparent && wishes.key === undefined && !wishes.footage) {
    return (
      `an .mp4 carries no transparency, and these frames are an overlay: give the footage that it lies over, ` +
      `or a key colour (--key '#00b140'), or write a .mov, a .webm or a folder of PNG frames (${folderLike(name)}), which carry it`
    );
  }
  if (painter.width % 2 === 1 || painter.height % 2 === 1) {
    const even = `${painter.width + (painter.width % 2)}x${painter.height + (painter.height % 2)}`;
    return `an .mp4 needs an even width and height, and the frames are ${painter.width}x${painter.height}: make them ${even}, or write a .mov, a .webm or a folder of PNG frames`;
  }
  return undefined;
}

function folderLike(name: string): string {
  return `${name.slice(0, name.length - extname(name).length)}/`;
}

function isFolder(path: string): boolean {
  return found(path)?.isDirectory() ?? false;
}

function found(path: string): Stats | undefined {
  try {
    return statSync(path);
  } catch {
    return undefined; // Nothing is there, or it cannot be looked at; writing will tell which.
  }
}

const choices = 'name a .mp4, .mov or .webm, or a folder for PNG frames (frames/)';
