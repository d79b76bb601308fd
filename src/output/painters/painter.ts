/**
 * What `src/output` needs to know about a film: how large its frames are, and how to draw one. Everything else about
 * pictures belongs to `src/picture`.
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
  /** Whether a frame may be transparent anywhere. If false, every pixel is opaque. */
  readonly transparent: boolean;
  /** Frame 0 and, in order, every frame that may differ from the previous one; undefined if any may. */
  readonly changes?: readonly number[] | undefined;
  /** Two frames with the same digest have the same pixels. Fast compared with drawing. */
  digestAt(frame: number): string;
  /** Draws the whole frame on a context that is clear (transparent) and has no transform. */
  paint(context: CanvasRenderingContext2D, frame: number): void;
  /** The same, with only the calls of `Context2D`, so that they can be recorded; undefined if it needs others. */
  readonly draw?: ((context: Context2D, frame: number) => void) | undefined;
  /**
   * From which another process can build the same painter; undefined if none can: everything is then drawn in this one.
   */
  readonly painting?: Painting | undefined;
}
