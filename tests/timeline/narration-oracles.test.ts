import { readFileSync } from 'node:fs';
import { parseText } from 'media-captions';
import { describe, expect, it } from 'vitest';
import { type TreeNode, WebVTTParser } from 'webvtt-parser';
import { toNumber } from '../../src/scene/fraction.ts';
import type { Cue } from '../../src/timeline/cue.ts';
import { readNarration } from '../../src/timeline/narration.ts';

const lesson = readFileSync(new URL('../../scenes/lamp-room.vtt', import.meta.url), 'utf8');
const settings = `WEBVTT some title

STYLE
::cue { color: papayawhip; }

NOTE a remark
over two lines

intro
00:01.000 --> 00:02.000 align:start line:0
<v Ann Other>One <b>two</b>

2
01:00:01.000 --> 01:00:02.000
two
lines
`;
const cutOff = `${settings}03:00:01.000 --> 03:00:02.000
the time line ended the cue before
`;
const broken = `WEBVTT

00:01.000 --> 00:02
no thousandths

00:61.000 --> 00:62.000
sixty-one seconds

00:03.000 --> 00:04.000
whole

0:05.000 -> 0:06.000
no arrow

00:07.000 --> 00:08.000
whole too
`;

function leaves(node: TreeNode): readonly TreeNode[] {
  return node.children === undefined ? [node] : node.children.flatMap(leaves);
}

function moments(cues: readonly Cue[]): readonly number[] {
  return cues.flatMap((cue) => cue.words.flatMap((word) => (word.start === undefined ? [] : [toNumber(word.start)])));
}

// Neither library is right everywhere. webvtt-parser decodes `&amp;` to `&;` (escapes are tested by the standard
// alone) and keeps no timestamp with its word (they are compared as moments in order). media-captions loses a cue
// whose time line ends the cue before it, and accepts times without thousandths, both against W3C WebVTT section 6:
// it reads the first two texts only.
describe('WebVTT as webvtt-parser 2.2.0 (W3C) reads it: identifiers, times, text, timestamps', () => {
  it.each(Object.entries({ lesson, settings, cutOff, broken }))('%s', (_, text) => {
    const ours = readNarration(text, 'talk.vtt').narration.cues;
    const theirs = new WebVTTParser().parse(text).cues;
    expect(theirs.length).toBeGreaterThan(1);
    expect(ours.map((cue) => [cue.identifier ?? '', toNumber(cue.start), toNumber(cue.end), cue.text])).toEqual(
      theirs.map((cue) => [
        cue.id,
        cue.startTime,
        cue.endTime,
        leaves(cue.tree)
          .map((leaf) => (leaf.type === 'text' ? leaf.value : ''))
          .join(''),
      ]),
    );
    // The library adds floating-point numbers up, so its 2.736 s are 2.7359999999999998.
    expect(moments(ours)).toEqual(
      theirs.flatMap((cue) =>
        leaves(cue.tree).flatMap((leaf) => (leaf.type === 'timestamp' ? [Number(Number(leaf.value).toFixed(3))] : [])),
      ),
    );
  });
});

describe('WebVTT as media-captions 1.0.4 reads it: identifiers and times', () => {
  it.each(Object.entries({ lesson, settings }))('%s', async (_, text) => {
    const ours = readNarration(text, 'talk.vtt').narration.cues;
    const { cues } = await parseText(text, { type: 'vtt' });
    expect(cues.length).toBeGreaterThan(1);
    expect(ours.map((cue) => [cue.identifier ?? '', toNumber(cue.start), toNumber(cue.end)])).toEqual(
      cues.map((cue) => [cue.id, cue.startTime, cue.endTime]),
    );
  });
});

it('SRT as media-captions 1.0.4 reads it', async () => {
  const text = '1\n00:00:01,000 --> 00:00:02,500\nOne\ntwo\n\n2\n00:01:03,040 --> 01:00:04,000\nthree\n';
  const { cues } = await parseText(text, { type: 'srt' });
  const ours = readNarration(text, 'talk.srt').narration.cues;
  expect(ours.map((cue) => [cue.identifier, toNumber(cue.start), toNumber(cue.end), cue.text])).toEqual(
    cues.map((cue) => [cue.id, cue.startTime, cue.endTime, cue.text]),
  );
});
