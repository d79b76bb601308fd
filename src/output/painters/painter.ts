/**
 * What this folder needs to know of a film: how large its frames are, and how to have one drawn. Everything else about
 * pictures belongs to `picture/`.
 */
import type { CanvasRenderingContext2D } from 'canvas';
import type { Context2D } from '../../picture/context.ts';
import type { Fraction } from '../../scene/fraction.ts';
import type { Painting } from './painting.ts';

export interface Painter {
  /** The frame's size in whole pixels. */
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: Fraction;
  /** Frames are numbered from 0 to `frameCount`, `frameCount` not included. */
  readonly frameCount: number;
  /** Whether a frame may let through what lies under it. Where it is false every pixel is opaque. */
  readonly transparent: boolean;
  /** Frame 0 and, in order, every frame that may look unlike the one before it; undefined where each may. */
  readonly changes?: readonly number[] | undefined;
  /** Two frames with the same digest have the same pixels. Cheap beside drawing. */
  digestAt(frame: number): string;
  /** Draws the whole frame on a context that is clear (transparent) and has no transform. */
  paint(context: CanvasRenderingContext2D, frame: number): void;
  /** The same by no other calls than those of the pictures, so that they can be written down; undefined where it needs more. */
  readonly draw?: ((context: Context2D, frame: number) => void) | undefined;
  /** By which another process makes the same painter; undefined where none can: all is then drawn in this one. */
  readonly painting?: Painting | undefined;
}
