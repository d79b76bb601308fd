/**
 * `+1.5`: this long after the step (in beats and items), the previous step (in a step's `at`), or the board's last
 * place.
 */

import { type Anchor, fault, resolved } from './anchor.ts';
import { secondsOf } from './anchor-absolute.ts';
import { add, type Fraction } from './fraction.ts';

export interface AfterTime {
  readonly kind: 'after';
  readonly seconds: Fraction;
}

export const afterAnchor: Anchor<AfterTime> = {
  examples: ['+1.5'],
  samples: ['+1.5'],
  word: undefined,
  dependsOn: ['base'],
  read(text) {
    if (!text.startsWith('+')) return undefined;
    const seconds = secondsOf(text.slice(1).trim());
    if (seconds !== undefined) return { ok: true, time: { kind: 'after', seconds } };
    return fault(
      'not-a-time',
      0,
      text.length,
      `"${text}" is not an offset; write +1.5 for one and a half seconds after`,
    );
  },
  resolve: ({ seconds }, _clock, { base }) => resolved(add(base, seconds)),
  absolutePart: () => undefined,
  whyNowhere: () => undefined,
};
