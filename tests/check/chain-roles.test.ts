/** Which links of a chain must be strong, given where its `-` are: links of a chain alternate (common practice). */
import { describe, expect, it } from 'vitest';
import { rolesOf } from '../../src/check/chain-roles.ts';

const rows: readonly (readonly [what: string, signs: string, roles: string])[] = [
  ['a single strong link', '=', 's'],
  ['a single weak link', '-', 'w'],
  ['links that alternate', '=-=-=', 'swsws'],
  ['a chain that begins weakly', '-=-', 'wsw'],
  ['= throughout: the first is strong', '===', 'sws'],
  ['= in place of a weak link', '===-=', 'swsws'],
  ['two weak links in a row', '=--=', 'swxs'],
  ['three weak links in a row', '=---=', 'swxxs'],
  [
    'two weak links after a = in a weak place: the links before the first - are those that alternate with it',
    '==--=',
    'wswxs',
  ],
  ['the turn is taken again after a fault', '=--=-=', 'swxsws'],
];

describe('the roles of links', () => {
  it.each(rows)('%s: %s', (_, signs, roles) => {
    const links = [...signs].map(
      (sign, from) => ({ kind: sign === '=' ? 'strong' : 'weak', from, to: from + 1 }) as const,
    );
    expect(
      rolesOf({ links })
        .map((role) => ({ strong: 's', weak: 'w', 'out of turn': 'x' })[role])
        .join(''),
    ).toBe(roles);
  });
});
