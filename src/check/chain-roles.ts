/**
 * Which links of a chain must be strong and which weak: they alternate.
 *
 * A `=` may be written where a weak link is expected (its ends are then also not both true); a `-` may not be written
 * where a strong one is expected. So the `-` links of a chain determine which of its links are weak.
 */
import type { Chain } from '../grid/terms.ts';

/** `out of turn`: a `-` where a strong link is expected, which makes two weak links in a row. */
export type LinkRole = 'strong' | 'weak' | 'out of turn';

/**
 * The role of each link, in the chain's order: the first `-` is weak, and the others alternate from it in both
 * directions.
 */
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
