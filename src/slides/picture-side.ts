/** Width and height of the picture on a slide, in its own pixels. */
export const pictureSide = 1000;
