/**
 * How a file declares its colours. Pictures are converted by us, or by a filter set to BT.709; here they get their tags
 * (ITU-T H.273).
 */

/** As ffmpeg's filter, for every encoder. */
export const colourTags = 'setparams=range=tv:color_primaries=bt709:color_trc=bt709:colorspace=bt709';

/**
 * As options of an encoder that writes them into its own stream (H.264, VP9): ffmpeg passes on the filter's tags from
 * 4.4 on; with 4.3 the stream would lack them.
 */
export const colourOptions = [
  ...['-color_range', 'tv', '-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709'],
] as const;
