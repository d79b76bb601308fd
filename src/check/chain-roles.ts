/**
 * Which links of a chain are due to be strong and which weak: they alternate.
 *
 * A `=` may be written where a weak link is due (the ends are then also not both true); a `-` may not stand where a
 * strong one is due. So the `-` of a chain decide which of its links are the weak ones.
 */
import type { Chain } from '../grid/terms.ts';

/** `out of turn`: a `-` where a strong link is due, two weak links in a row. */
export type LinkRole = 'strong' | 'weak' | 'out of turn';

/** The role of each link, in the chain's order. */
export function rolesOf(chain: Pick<Chain, 'links'>): LinkRole[] {
  const weakPlaces = new Set(chain.links.flatMap((link, index) => (link.kind === 'weak' ? [index % 2] : [])));
  if (weakPlaces.size < 2) {
    const weakPlace = weakPlaces.has(0) ? 0 : 1;
    return chain.links.map((_, index) => (index % 2 === weakPlace ? 'weak' : 'strong'));
  }
  return rolesOneByOne(chain);
}

/** Where the `-` disagree among themselves: link after link, each taking its turn from the one before. */
function rolesOneByOne(chain: Pick<Chain, 'links'>): LinkRole[] {
  const roles: LinkRole[] = [];
  for (const link of chain.links) {
    const before = roles.at(-1);
    if (link.kind === 'weak') roles.push(before === undefined || before === 'strong' ? 'weak' : 'out of turn');
    else roles.push(before === 'strong' ? 'weak' : 'strong');
  }
  return roles;
}
