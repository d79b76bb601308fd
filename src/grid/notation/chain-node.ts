/**
 * One node of a chain, or two with the link between them in a bracket: `(7)r12c5`, `r9c5`, `7r1c5`, `(5=28)r9c34`, `(7-8)r2c5`.
 */

import { digit } from '../geometry.ts';
import type { Cell, Digit } from '../grid.ts';
import type { LinkKind } from '../terms.ts';
import { cellsFollow, readCells } from './cells.ts';
import { identify } from './identify.ts';
import { readNumbers } from './numbers.ts';
import { lookAt, report, type Scan, skipBlanks, take } from './scan.ts';

/** A node with its place in the text, `end` not included; two nodes of one bracket share it. */
export interface WrittenNode {
  /** Empty where they could not be read; that was reported, and nothing more need be said about them. */
  readonly digits: readonly Digit[];
  readonly cells: readonly Cell[];
  readonly at: number;
  readonly end: number;
}

/** Nodes and links in the order of the text: `links[i]` follows `nodes[i]`. */
export interface WrittenChain {
  readonly nodes: WrittenNode[];
  readonly links: LinkKind[];
}

const linkSign = /\s*(?:=(?!>)|[-−–])\s*/y;

const wanted = 'a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell';
const missingDigit = `a digit is missing in this bracket; ${wanted}`;

/** What stands before the cells. */
interface Front {
  readonly digits: readonly Digit[];
  /** The link and the digits after it, where a bracket holds two nodes. */
  readonly second: { readonly link: LinkKind; readonly digits: readonly Digit[] } | undefined;
  /** A bracket was opened and not closed. */
  readonly open: boolean;
}

/**
 * Adds the node or the two nodes here, with the link between them. What cannot be read is reported, passed over up to
 * the next link, and stands in the chain as a node without cells.
 */
export function readNode(scan: Scan, { nodes, links }: WrittenChain): void {
  const at = scan.at;
  const front = readFront(scan);
  const frontEnd = scan.at;
  skipBlanks(scan);
  if (!cellsFollow(scan)) {
    refuseNode(scan, at, frontEnd);
    nodes.push({ digits: [], cells: [], at, end: scan.at });
    return;
  }
  const cells = readCells(scan);
  if (front?.open === true) reportOpenBracket(scan, at, frontEnd);
  const end = scan.at;
  const before = nodes.at(-1);
  if (front === undefined && before === undefined) {
    report(scan, at, end, `the first node needs its digits; write (4)${scan.text.slice(at, end)}, with your digit`);
  }
  nodes.push({ digits: front?.digits ?? before?.digits ?? [], cells, at, end });
  if (front?.second === undefined) return;
  links.push(front.second.link);
  nodes.push({ digits: front.second.digits, cells, at, end });
}

/** The kind of the link whose sign stands here, passing over it; undefined where there is none. */
export function takeLink(scan: Scan): LinkKind | undefined {
  const sign = take(scan, linkSign);
  if (sign === undefined) return undefined;
  return sign.trim() === '=' ? 'strong' : 'weak';
}

/** Undefined where no digits are written. */
function readFront(scan: Scan): Front | undefined {
  const from = scan.at;
  const bracket = take(scan, /\(\s*/y) !== undefined;
  if (lookAt(scan, /\d/y) === undefined) {
    scan.at = from;
    return bracket ? passOverEmptyBracket(scan) : undefined;
  }
  const digits = readOwnDigits(scan);
  if (!bracket) return { digits, second: undefined, open: false };
  const second = readSecond(scan, from);
  reportFurtherLinks(scan, from);
  const open = take(scan, /\s*\)/y) === undefined;
  return { digits, second, open };
}

/** `()` and `(=7)`: the digit that is missing is reported. */
function passOverEmptyBracket(scan: Scan): Front | undefined {
  const bracket = take(scan, /\([^)a-z]*\)/iy);
  if (bracket === undefined) return undefined;
  report(scan, scan.at - bracket.length, scan.at, missingDigit);
  return { digits: [], second: undefined, open: false };
}

/** The `=8` of `(7=8)`. */
function readSecond(scan: Scan, bracketAt: number): Front['second'] {
  const from = scan.at;
  const link = takeLink(scan);
  if (link === undefined) return undefined;
  if (lookAt(scan, /\d/y) !== undefined) return { link, digits: readOwnDigits(scan) };
  if (lookAt(scan, /\)/y) !== undefined) {
    report(scan, bracketAt, scan.at + 1, missingDigit);
    return { link, digits: [] };
  }
  scan.at = from;
  return undefined;
}

function reportFurtherLinks(scan: Scan, from: number): void {
  let further = false;
  while (lookAt(scan, /\s*(?:=(?!>)|[-−–])\s*\d+\s*(?=[)=\-−–])/y) !== undefined) {
    takeLink(scan);
    readOwnDigits(scan);
    further = true;
  }
  if (!further) return;
  report(
    scan,
    from,
    scan.at,
    'a bracket holds two nodes at most; write the next one after a link of its own, as in (4=1)r3c2-(1=2)r3c4',
  );
}

function readOwnDigits(scan: Scan): Digit[] {
  return readNumbers(scan, 'digit').map((number) => digit(scan.grid, number));
}

function reportOpenBracket(scan: Scan, at: number, frontEnd: number): void {
  const inside = scan.text.slice(at + 1, frontEnd).trim();
  const cells = scan.text.slice(frontEnd, scan.at).trim();
  if (take(scan, /\s*\)/y) !== undefined) {
    report(scan, at, scan.at, `a bracket holds the digits alone; write (${inside})${cells}`);
  } else {
    report(scan, at, frontEnd, `this bracket is not closed; write (${inside})${cells}`);
  }
}

/** Reports what stands here in place of a node, and passes over it up to the next link, arrow or end. */
function refuseNode(scan: Scan, at: number, frontEnd: number): void {
  if (passOverBareBracket(scan, at)) return;
  take(scan, /[^\s=\-−–⇒→]*/y);
  const found = scan.text.slice(at, scan.at).trim();
  const end = at + found.length;
  if (found === '') report(scan, at, at + 1, `no node stands before this link; ${wanted}`);
  else if (scan.at === frontEnd) report(scan, at, end, `no cells stand after "${found}"; ${wanted}`);
  else report(scan, at, end, `"${found}" ${identify(found) ?? 'cannot be read'}; ${wanted}`);
  take(scan, /[^=\-−–⇒→]+/y);
}

/** `7=8r1c2`: a link inside a cell without its bracket. */
function passOverBareBracket(scan: Scan, at: number): boolean {
  const stoodAt = scan.at;
  scan.at = at;
  const digits = take(scan, /\d+\s*[=\-−–]\s*\d+(?=[rb]\d+[cp]\d)/iy);
  if (digits === undefined) {
    scan.at = stoodAt;
    return false;
  }
  const cells = take(scan, /[^\s=\-−–⇒→]+/y) ?? '';
  report(scan, at, scan.at, `a link inside a cell stands in a bracket; write (${digits})${cells}`);
  return true;
}
