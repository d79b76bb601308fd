/**
 * The codecs that are asked for by name (`--codec av1`), known without loading any of them: the command line names them
 * before anything is drawn.
 */
export const namedCodecs = ['av1', 'hevc'] as const;

export type NamedCodec = (typeof namedCodecs)[number];
