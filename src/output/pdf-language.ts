/**
 * The language of a PDF, and that its title be shown rather than its file's name: two entries of the document's catalog
 * that the canvas library cannot set. They are added by an incremental update, as ISO 32000-1, 7.5.6 has it: the file as
 * it is, then the catalog anew with its cross-reference section and trailer.
 */
import { Bug } from '../grid/bug.ts';

/** The file with `/Lang` and `/DisplayDocTitle`. `language`: a tag of BCP 47. */
export function withLanguage(pdf: Uint8Array, language: string): Uint8Array {
  const text = Buffer.from(pdf).toString('latin1');
  const trailer = /trailer\s*<<(?<dictionary>.*?)>>\s*startxref\s+(?<at>\d+)\s+%%EOF\s*$/s.exec(text)?.groups;
  const { dictionary, at } = trailer ?? {};
  const root = /\/Root\s+(\d+)\s+0\s+R/.exec(dictionary ?? '')?.[1];
  const size = /\/Size\s+(\d+)/.exec(dictionary ?? '')?.[1];
  if (dictionary === undefined || at === undefined || root === undefined || size === undefined)
    throw new Bug('the canvas library writes a PDF with a plain trailer');
  const catalog = new RegExp(`(?:^|[\\r\\n])${root} 0 obj\\s*<<(.*?)>>\\s*endobj`, 's').exec(text)?.[1];
  if (catalog === undefined || catalog.includes('/Lang')) throw new Bug('the catalog of a PDF lies open in it');
  const end = text.endsWith('\n') ? '' : '\n';
  const entries = `${catalog.trim()}\n   /Lang (${language})\n   /ViewerPreferences << /DisplayDocTitle true >>`;
  const object = `${root} 0 obj\n<< ${entries}\n>>\nendobj\n`;
  const start = pdf.length + end.length;
  // An entry has twenty bytes, its end of line included (7.5.4).
  const entry = `${String(start).padStart(10, '0')} 00000 n \n`;
  const section = `xref\n${root} 1\n${entry}trailer\n<<${dictionary.trimEnd()}\n   /Prev ${at}\n>>\n`;
  const tail = `startxref\n${start + object.length}\n%%EOF\n`;
  return Buffer.concat([pdf, Buffer.from(end + object + section + tail, 'latin1')]);
}
