/**
 * Links of an item of a cascade, all together.
 */

import { zero } from '../scene/fraction.ts';
import { evenly } from '../staging/pacing.ts';
import { arrows } from './link.ts';
import type { DrawnRecord } from './record.ts';

export const beat = {
  strokes: (context, { links }, { from }) => arrows(context, links, from, (count) => evenly(from, count, zero)),
} satisfies DrawnRecord<'arrows'>['beat'];
