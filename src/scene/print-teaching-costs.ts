/**
 * The project's own table of teaching costs, as the file that users copy: `assets/teaching-costs.yaml`.
 */
import { inTeachingOrder, ownCosts, type TaughtTechnique } from '../techniques/teaching.ts';

const widest = 120;

/** The whole file: each name on its line, in the order of teaching, with a blank line between the groups. */
export function printOwnCosts(): string {
  const priced = inTeachingOrder.filter(({ teaching }) => teaching.cost !== 'free');
  const lines = priced.flatMap((each, index) => {
    const before = priced[index - 1];
    const beginsGroup = before !== undefined && groupOf(before) !== groupOf(each);
    return [...(beginsGroup ? [''] : []), ...linesOf(each)];
  });
  return [
    ...commented(heading),
    '',
    '# For every argument that is not free.',
    `step: ${ownCosts.step}`,
    '',
    '# What is seen without being shown. Every open cell is filled once on every path, so that this can tell no two paths apart.',
    `free: [${ownCosts.free.join(', ')}]`,
    '',
    'names:',
    ...lines,
    '',
  ].join('\n');
}

/** Names of the same thousand are grouped. */
function groupOf({ teaching }: TaughtTechnique): number {
  return Math.floor(teaching.place / 1000);
}

function linesOf({ technique: { name }, teaching }: TaughtTechnique): string[] {
  if (teaching.cost === 'free') return [];
  const { cost, sets, each, note } = teaching;
  const written = sets === undefined ? String(cost) : `{cost: ${cost}, sets: ${sets}, each: ${each ?? 0}}`;
  return [...(note === undefined ? [] : commented(note).map((line) => `  ${line}`)), `  ${name}: ${written}`];
}

const heading = `\
What arguments cost an audience: the table by which \`plan\` chooses. Copy it, change it, and give it with --costs.

The plan of the least cost is the best one. Names stand in the order in which they are taught, which is what
\`--know upto:NAME\` goes by. The figures are common practice and judgement, not measurement: what matters is how they
compare with one another. What they are meant to say:

  - Every argument costs 1 for being one more to follow (\`step\`), whatever it is.
  - A name costs the more, the more a viewer must hold in mind at once: one set (locked candidates), sets of one house
    (subsets), sets of one digit (fish, chains of one digit), sets of several digits, sets of several cells each.
  - A hidden subset is harder to see than a naked one of the same size, and a fish with fins than one without.
  - What rests on there being one solution is quick to see, and costs a little more than its size: some of an audience
    do not accept it. \`--without uniqueness\` leaves it out.
  - A chain costs more for every strong link beyond the few that a viewer holds in mind at once: \`{cost, sets, each}\`
    costs \`cost\` up to so many sets, and \`each\` for every set more.
  - What branches costs more than what runs on: forcing chains and nets come last, and are worth ten plain arguments.`;

function commented(text: string): string[] {
  const lines = text.split('\n').map((line) => (line === '' ? '#' : `# ${line}`));
  const long = lines.find((line) => line.length > widest);
  if (long !== undefined) throw new Error(`a comment of the table is too wide: ${long}`);
  return lines;
}
