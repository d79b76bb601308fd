/**
 * Which links of a chain are due to be strong and which weak: they alternate.
 *
 * A `=` may be written where a weak link is due (the ends are then also not both true); a `-` may not stand where a
 * strong one is due. So the `-` of a chain decide which of its links are the weak ones.
 */
import type { Chain } from '../grid/terms.ts';

/** `out of turn`: a `-` where a strong link is due, two weak links in a row. */
export type LinkRole = 'strong' | 'weak' | 'out of turn';

/** The role of each link, in the chain's order: the first `-` is weak, and from it the others take their turns both ways. */
export function rolesOf(chain: Pick<Chain, 'links'>): LinkRole[] {
  const firstWeak = chain.links.findIndex((link) => link.kind === 'weak');
  const roles: LinkRole[] = [];
  for (const [index, link] of chain.links.entries()) {
    const before = roles.at(-1);
    if (index <= firstWeak) roles.push((firstWeak - index) % 2 === 0 ? 'weak' : 'strong');
    else if (before === 'strong') roles.push('weak');
    else roles.push(link.kind === 'weak' ? 'out of turn' : 'strong');
  }
  return roles;
}
