/**
 * Chains in the trade's notation: `(7)r1c5=r9c5-r9c8=r2c8 => r1c8<>7`, `(7=8)r1c2-(8=5)r4c2`, `(5=28)r9c34-(2)r9c1`.
 *
 * A bracket holds the digits of one node, or of two with the link between them. Digits left out carry on from the
 * node before. A loop repeats its first node, or its first bracket, at the end, or ends with a link that leads nowhere.
 */
import { sharedHouses } from '../geometry.ts';
import type { Grid } from '../grid.ts';
import type { Chain, ChainNode, Conclusion, LinkKind, Reading } from '../terms.ts';
import { readNode, takeLink, type WrittenChain, type WrittenNode } from './chain-node.ts';
import { readConclusionList } from './conclusions.ts';
import { printNode } from './print.ts';
import { isAtEnd, lookAt, readingOf, report, type Scan, skipBlanks, startScan, take } from './scan.ts';

const arrow = /\s*(?:=>|⇒|→)\s*/y;

/** One chain, and the conclusions after its arrow. */
export function parseChain(grid: Grid, text: string): Reading<Chain> {
  const scan = startScan(grid, text);
  const written = readNodesAndLinks(scan);
  const concludes = readConclusionsAfterArrow(scan);
  if (scan.faults.length === 0) checkNodes(scan, written.nodes);
  if (scan.faults.length === 0) checkLinks(scan, written);
  return readingOf(scan, chainOf(written, concludes));
}

function readNodesAndLinks(scan: Scan): WrittenChain {
  const written: WrittenChain = { nodes: [], links: [] };
  skipBlanks(scan);
  while (!isAtEndOfLinks(scan)) {
    readNode(scan, written);
    const link = takeLink(scan) ?? reportMissingLink(scan);
    if (link === undefined) break;
    written.links.push(link);
  }
  if (written.nodes.length === 0) {
    report(scan, 0, scan.at, 'no chain is written here; it is nodes and links, as in (4)r1c2=r3c2-r3c4=r2c4');
  }
  return written;
}

function isAtEndOfLinks(scan: Scan): boolean {
  return isAtEnd(scan) || lookAt(scan, arrow) !== undefined;
}

/** Undefined where the nodes are at their end. Where a node follows at once, a link is assumed; all else is passed over. */
function reportMissingLink(scan: Scan): LinkKind | undefined {
  if (isAtEndOfLinks(scan)) return undefined;
  skipBlanks(scan);
  if (isAtEnd(scan)) return undefined;
  const from = scan.at;
  const conclusion = take(scan, /[^\s=\-−–⇒→(<>≠]*\s*(?:<>|≠)\s*\d*/y);
  if (conclusion !== undefined) {
    report(
      scan,
      from,
      scan.at,
      `"${conclusion}" stands in the chain; conclusions stand after an arrow, as in => r3c2<>4`,
    );
    take(scan, /[^=\-−–⇒→]+/y);
    return takeLink(scan);
  }
  if (lookAt(scan, /\(|\d*[rb]\d/iy) !== undefined) {
    report(scan, from, from + 1, 'no link stands before this node; between two nodes stands = (strong) or - (weak)');
    return 'weak';
  }
  const found = take(scan, /[^\s=\-−–⇒→]/y) ?? '';
  report(scan, from, scan.at, `"${found}" does not belong in a chain; between two nodes stands = (strong) or - (weak)`);
  take(scan, /[^=\-−–⇒→]+/y);
  return takeLink(scan);
}

function readConclusionsAfterArrow(scan: Scan): Conclusion[] {
  const sign = take(scan, arrow);
  if (sign === undefined) return [];
  if (!isAtEnd(scan)) return readConclusionList(scan).map(({ conclusion }) => conclusion);
  const from = scan.at - sign.trimStart().length;
  report(scan, from, scan.at, 'no conclusion stands after this arrow; write one, as in => r3c2<>4, or leave it out');
  return [];
}

function checkNodes(scan: Scan, nodes: readonly WrittenNode[]): void {
  for (const node of nodes) {
    if (node.cells.length === 1 || sharedHouses(scan.grid, node.cells).length > 0) continue;
    const written = scan.text.slice(node.at, node.end);
    report(
      scan,
      node.at,
      node.end,
      `no house holds all cells of "${written}"; those of one node lie in one row, column or box`,
    );
  }
}

function checkLinks(scan: Scan, { nodes, links }: WrittenChain): void {
  const first = nodes[0]!;
  if (nodes.length === 1) {
    const message = links.length === 0 ? 'a chain needs a link' : 'no node stands after this link';
    report(scan, first.at, scan.text.trimEnd().length, `${message}; write at least two nodes, as in (4)r1c2=r3c2`);
  }
  for (const [index, node] of nodes.entries()) {
    const next = nodes[index + 1];
    if (next === undefined || !isSameNode(node, next)) continue;
    report(
      scan,
      node.at,
      next.end,
      `this link leads from ${printNode(scan.grid, node)} to itself; name two different ends`,
    );
  }
  const last = nodes.at(-1)!;
  if (nodes.length > 1 && links.length === nodes.length && isSameNode(first, last)) {
    const message =
      'this loop is closed twice, by its first node and by a link that leads nowhere; leave out one of them';
    report(scan, last.at, scan.text.trimEnd().length, message);
  }
}

function chainOf({ nodes, links }: WrittenChain, concludes: readonly Conclusion[]): Chain {
  const repeated = repeatedAtEnd(nodes, links);
  const loop = repeated > 0 || links.length === nodes.length;
  const kept: ChainNode[] = nodes.slice(0, nodes.length - repeated).map(({ digits, cells }) => ({ digits, cells }));
  const keptLinks = repeated === 2 ? links.slice(0, -1) : links;
  return {
    nodes: kept,
    links: keptLinks.map((kind, from) => ({ kind, from, to: from + 1 === kept.length ? 0 : from + 1 })),
    loop,
    concludes,
  };
}

/** How many nodes at the end repeat the first ones to close a loop: the first node, or the two of the first bracket. */
function repeatedAtEnd(nodes: readonly WrittenNode[], links: readonly LinkKind[]): 0 | 1 | 2 {
  const [first, second] = nodes;
  const last = nodes.at(-1);
  const beforeLast = nodes.at(-2);
  if (first === undefined || second === undefined || last === undefined || beforeLast === undefined) return 0;
  if (nodes.length > 2 && isSameNode(first, last)) return 1;
  const inBrackets = first.at === second.at && beforeLast.at === last.at && links[0] === links[nodes.length - 2];
  return nodes.length > 3 && inBrackets && isSameNode(first, beforeLast) && isSameNode(second, last) ? 2 : 0;
}

function isSameNode(a: ChainNode, b: ChainNode): boolean {
  return a.digits.join() === b.digits.join() && a.cells.join() === b.cells.join();
}
