/**
 * How sound is compressed in each container.
 */
import type { Container } from './target.ts';

export const sounds: Readonly<Record<Container, { readonly encoder: string; readonly options: readonly string[] }>> = {
  mp4: { encoder: 'aac', options: ['-b:a', '192k'] },
  mov: { encoder: 'pcm_s16le', options: [] },
  webm: { encoder: 'libopus', options: ['-b:a', '128k'] },
};
