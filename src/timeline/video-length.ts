/**
 * A length of the video that is known before its steps are resolved.
 */
import type { Fraction } from '../scene/fraction.ts';

export interface VideoLength {
  readonly seconds: Fraction;
  readonly frameCount: number;
  /** What fixed it, for messages. */
  readonly source: 'length' | 'footage' | 'audio';
}
