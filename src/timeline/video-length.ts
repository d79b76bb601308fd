/**
 * A length that the video has before its steps are looked at.
 */
import type { Fraction } from '../scene/fraction.ts';

export interface VideoLength {
  readonly seconds: Fraction;
  readonly frameCount: number;
  /** What fixed it, for messages. */
  readonly source: 'length' | 'footage' | 'audio';
}
