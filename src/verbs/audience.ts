/**
 * The options that say what an audience knows, and what it costs to teach the rest.
 */
import { file, text } from './kinds.ts';

export const audience = {
  know: text(
    '<names>',
    'use only what the audience knows: argument names or families, or upto:NAME in the order of the cost table',
  ),
  without: text('<names>', 'leave out these names or families, such as uniqueness'),
  costs: file('the table of teaching costs (default: assets/teaching-costs.yaml)'),
};
