/**
 * A package of slides rewritten part by part: without its creation time, without content types of parts that it does
 * not have, and with the pictures instead of the placeholder pixels.
 */
import type { FileHandle } from 'node:fs/promises';
import { zipEntries, zipWriter } from './zip.ts';

export interface Repacking {
  /** A tag of BCP 47. */
  readonly language: string;
  /** The PNG of slide `number`, from 1; undefined if the slide has none. */
  readonly pictureOf: (number: number) => Promise<Buffer | undefined>;
}

/**
 * Writes the parts of `archive` to `file`, the content types first (common practice), pictures in the slides' order.
 */
export async function repacked(archive: Buffer, file: FileHandle, { language, pictureOf }: Repacking): Promise<void> {
  const entries = zipEntries(archive);
  const names = new Set(entries.map(({ name }) => name));
  const zip = zipWriter(file);
  const isPicture = (name: string) => /^ppt\/media\/image-(\d+)-\d+\.png$/.exec(name);
  const texts = entries.filter(({ name }) => !isPicture(name));
  texts.sort((a, b) => Number(b.name === contentTypes) - Number(a.name === contentTypes));
  for (const { name, bytes } of texts) {
    const text = bytes().toString('utf8');
    await zip.add(name, Buffer.from(fixed(name, text, names, language), 'utf8'));
  }
  const pictures = entries.flatMap(({ name, bytes }) => {
    const number = isPicture(name)?.[1];
    return number === undefined ? [] : [{ name, bytes, number: Number(number) }];
  });
  pictures.sort((a, b) => a.number - b.number);
  for (const { name, bytes, number } of pictures) await zip.add(name, (await pictureOf(number)) ?? bytes(), 'stored');
  await zip.finish();
}

const contentTypes = '[Content_Types].xml';

function fixed(name: string, text: string, names: ReadonlySet<string>, language: string): string {
  if (name === contentTypes) {
    // Each override must name a part of the package (ECMA-376 Part 2, 10.1.2.2).
    return text.replace(/\s*<Override PartName="\/([^"]+)"[^>]*\/>/g, (override, part: string) =>
      names.has(part) ? override : '',
    );
  }
  if (name === 'docProps/core.xml')
    return text.replace(/(<dcterms:(?:created|modified)[^>]*>)[^<]*/g, '$11970-01-01T00:00:00Z');
  if (language !== 'en' && /^ppt\/(slides|notesSlides)\/[^/]+\.xml$/.test(name))
    return text.replaceAll('lang="en-US"', `lang="${language}"`);
  return text;
}
