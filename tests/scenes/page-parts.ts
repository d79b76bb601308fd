/**
 * The parts of a page of scenes/names/ that are taken over from elsewhere: the step of its scene, the names that it is
 * related to, and the table of all names. Everything else of a page is written by hand.
 */
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { families, moreGeneral, moreSpecial, slugOf } from './name-pages.ts';

const sceneHeading = '## In a scene';
const relatedHeading = '## Related names';

/** The page with the step of its scene and its relations as they are now; `fits` as the report of the scene gives them. */
export function refreshedPage(name: ArgumentName, page: string, scene: string, fits: readonly ArgumentName[]): string {
  const inScene = [
    '```yaml',
    stepOf(scene),
    '```',
    '',
    `The whole scene is [${slugOf(name)}.yaml](${slugOf(name)}.yaml).`,
  ];
  return withSection(withSection(page, sceneHeading, inScene.join('\n')), relatedHeading, relations(name, fits));
}

/** The index with the table of all names as they are now. */
export function refreshedIndex(page: string): string {
  const parts = families.flatMap(({ title, names }) => [`### ${title}`, '', ...names.map(entryOf), '']);
  return withSection(page, '## All names', parts.join('\n').trimEnd());
}

function entryOf(name: ArgumentName): string {
  const wider = moreGeneral(name);
  const kind = wider.length === 0 ? '' : `: a kind of ${wider.join(' and of ')}`;
  return `- [${name}](${slugOf(name)}.md)${kind}`;
}

/** The first step of the scene, as it would stand alone. */
function stepOf(scene: string): string {
  const [, steps] = scene.split(/^steps:\n/m);
  return (steps ?? '')
    .trimEnd()
    .split('\n')
    .map((line) => line.slice(2))
    .join('\n');
}

function relations(name: ArgumentName, fits: readonly ArgumentName[]): string {
  const near = [...moreSpecial(name), ...moreGeneral(name)];
  const besides = fits.filter((other) => other !== name && !near.includes(other));
  return [
    ...listed('More special', moreSpecial(name)),
    ...listed('More general', moreGeneral(name)),
    ...listed('The argument in the picture also bears the names', besides),
  ].join('\n');
}

function listed(title: string, names: readonly ArgumentName[]): string[] {
  if (names.length === 0) return [];
  return [`- ${title}: ${names.map((name) => `[${name}](${slugOf(name)}.md)`).join(', ')}.`];
}

/** The page with this text below the heading, up to the next heading of the same rank. */
function withSection(page: string, heading: string, text: string): string {
  const from = page.indexOf(`${heading}\n`);
  if (from < 0) throw new Error(`a page without '${heading}'`);
  const next = page.indexOf('\n## ', from);
  const end = next < 0 ? '\n' : page.slice(next);
  return `${page.slice(0, from)}${heading}\n\n${text}${text === '' ? '' : '\n'}${end === '\n' ? '' : end}`;
}
