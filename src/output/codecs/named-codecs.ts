/**
 * The codecs that are selected by name (`--codec av1`), listed without loading any of them: the command line needs the
 * names before anything is drawn.
 */
export const namedCodecs = ['av1', 'hevc'] as const;

export type NamedCodec = (typeof namedCodecs)[number];
