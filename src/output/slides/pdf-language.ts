/**
 * The language of a PDF, and the setting that viewers show its title rather than its file name: two entries of the
 * document catalog that the canvas library cannot set. They are added by an incremental update (ISO 32000-1, 7.5.6):
 * the unchanged file, then a new catalog with its cross-references. Whether these are a table or a stream depends on
 * the version of cairo that the library was built with; the update is of the same kind.
 */
import { inflateSync } from 'node:zlib';
import { Bug } from '../../grid/bug.ts';

/** The file with `/Lang` and `/DisplayDocTitle`. `language`: a tag of BCP 47. */
export function withLanguage(pdf: Uint8Array, language: string): Uint8Array {
  const text = Buffer.from(pdf).toString('latin1');
  const at = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(text)?.[1]);
  const isTable = text.startsWith('xref', at);
  const dictionary = isTable ? dictionaryAfter(text, text.indexOf('trailer', at)) : dictionaryAfter(text, at);
  const root = Number(/\/Root\s+(\d+)\s+0\s+R/.exec(dictionary ?? '')?.[1]);
  const size = Number(/\/Size\s+(\d+)/.exec(dictionary ?? '')?.[1]);
  if (dictionary === undefined || Number.isNaN(at + root + size)) throw new Bug('a PDF ends with its cross-references');
  const catalog = plainObject(text, root) ?? packedObject(text, root);
  if (catalog === undefined || catalog.includes('/Lang')) throw new Bug('a PDF has a catalog, without a language');
  const own = `/Lang (${language}) /ViewerPreferences << /DisplayDocTitle true >>`;
  const object = `${root} 0 obj\n<< ${catalog.trim()} ${own} >>\nendobj\n`;
  const start = pdf.length + 1;
  const update = { root, size, start, previous: at, length: object.length, kept: keptEntries(dictionary) };
  const section = isTable ? tableOf(update) : streamOf(update);
  return Buffer.concat([
    pdf,
    Buffer.from(`\n${object}${section}startxref\n${start + object.length}\n%%EOF\n`, 'latin1'),
  ]);
}

interface Update {
  readonly root: number;
  /** One more than the highest number of an object. */
  readonly size: number;
  /** Where the catalog is, and how many bytes it has. */
  readonly start: number;
  readonly length: number;
  /** Where the previous cross-references are. */
  readonly previous: number;
  /** Entries of the trailer that remain valid. */
  readonly kept: string;
}

/** Section 7.5.4: an entry has twenty bytes, including its end of line. */
function tableOf({ root, size, start, previous, kept }: Update): string {
  const entry = `${String(start).padStart(10, '0')} 00000 n \n`;
  return `xref\n${root} 1\n${entry}trailer\n<< /Size ${size} ${kept} /Prev ${previous} >>\n`;
}

/** Section 7.5.8: the catalog and the stream itself, each with type 1 (in use), offset and generation. */
function streamOf({ root, size, start, length, previous, kept }: Update): string {
  const entries = [start, start + length].map((offset) => {
    const entry = Buffer.alloc(7);
    entry[0] = 1;
    entry.writeUInt32BE(offset, 1);
    return entry.toString('latin1');
  });
  const data = entries.join('');
  const index = `/W [1 4 2] /Index [${root} 1 ${size} 1]`;
  return `${size} 0 obj\n<< /Type /XRef /Size ${size + 1} ${index} ${kept} /Prev ${previous} /Length ${data.length} >>\nstream\n${data}\nendstream\nendobj\n`;
}

function keptEntries(dictionary: string): string {
  const entries = [/\/Root\s+\d+\s+0\s+R/, /\/Info\s+\d+\s+0\s+R/, /\/ID\s*\[[^\]]*\]/];
  return entries.flatMap((entry) => entry.exec(dictionary)?.[0] ?? []).join(' ');
}

/** The text between the first `<<` from `from` on and its `>>`. */
function dictionaryAfter(text: string, from: number): string | undefined {
  const open = text.indexOf('<<', from);
  let depth = 0;
  for (let at = open; at >= 0 && at < text.length; at++) {
    const pair = text.slice(at, at + 2);
    if (pair === '<<') depth += 1;
    if (pair !== '<<' && pair !== '>>') continue;
    if (pair === '>>') depth -= 1;
    if (depth === 0) return text.slice(open + 2, at);
    at += 1;
  }
  return undefined;
}

/** The dictionary of an uncompressed object in the file. */
function plainObject(text: string, number: number): string | undefined {
  const found = new RegExp(`(?:^|[\\r\\n])${number} 0 obj\\s*<<`).exec(text);
  return found === null ? undefined : dictionaryAfter(text, found.index);
}

/** The dictionary of an object within a stream of objects (7.5.7): pairs of number and offset, then the objects. */
function packedObject(text: string, number: number): string | undefined {
  for (const match of text.matchAll(/\d+ 0 obj\s*<</g)) {
    const dictionary = dictionaryAfter(text, match.index) ?? '';
    if (!/\/Type\s*\/ObjStm/.test(dictionary)) continue;
    const data = text.indexOf('stream', match.index + dictionary.length) + 'stream'.length;
    const begin = text.startsWith('\r\n', data) ? data + 2 : data + 1;
    const packed = Buffer.from(text.slice(begin, text.indexOf('endstream', begin)), 'latin1');
    const objects = inflateSync(packed).toString('latin1');
    const first = Number(/\/First\s+(\d+)/.exec(dictionary)?.[1]);
    const pairs = objects.slice(0, first).trim().split(/\s+/).map(Number);
    const place = pairs.findIndex((value, index) => index % 2 === 0 && value === number);
    if (place >= 0) return dictionaryAfter(objects, first + (pairs[place + 1] ?? 0));
  }
  return undefined;
}
