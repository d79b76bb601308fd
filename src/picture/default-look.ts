/**
 * The look of a scene that names none: `assets/looks/daybook.yaml`, as a value.
 * Made for light footage and for boards drawn whole; its marks work on dark footage too.
 *
 * Group colours and vermilion: Okabe & Ito, Color Universal Design, 2008.
 */
import type { Look } from '../scene/look.ts';

/** The complete look; other looks may leave out what they share with it. */
export const defaultLook: Look = {
  name: 'daybook',
  colours: {
    frame: '#e8e5dc',
    cell: '#fdfcf8',
    line: '#b4b0a4',
    houseLine: '#26303a',
    given: '#17202a',
    written: '#0b5a7a',
    candidate: '#26303a',
    text: '#17202a',
    quietText: '#5d6469',
    card: '#fdfcf8',
    veil: '#dedacd',
    casing: '#0a0e13',
    casingLight: '#fdfcf8',
    strong: '#17202a',
    weak: '#43577d',
    removal: '#d55e00',
    placement: '#0b5a7a',
    plain: '#43577d',
    groups: {
      orange: '#e69f00',
      sky: '#56b4e9',
      green: '#009e73',
      yellow: '#f0e442',
      blue: '#0072b2',
      purple: '#cc79a7',
    },
  },
  inks: { fill: 0.3, disc: 0.28, veil: 0.72, candidate: 0.66, quiet: 0.44 },
  strokes: {
    line: 0.015,
    houseLine: 0.04,
    link: 0.068,
    weakLink: 0.054,
    circle: 0.05,
    strike: 0.066,
    outline: 0.05,
    casing: 0.016,
    cornerRadius: 0.08,
    leastPx: 5,
    leastHeadPx: 16,
  },
  type: {
    family: 'IBM Plex Sans',
    digit: 0.54,
    candidate: 0.24,
    emphasis: 1.3,
    titlePx: 48,
    headingPx: 60,
    bodyPx: 40,
    notePx: 44,
    labelPx: 32,
  },
  motion: {
    come: 'drawn',
    fill: 0.2,
    apart: 0.05,
    apartInAll: 0.6,
    circle: 0.25,
    linkShortest: 0.3,
    linkLongest: 0.7,
    strike: 0.2,
    strikeHold: 0.7,
    fade: 0.15,
    place: 0.3,
    outline: 0.35,
    sight: 0.4,
    focus: 0.25,
  },
};
