/** The parts in use of libraries that bring no types. */
declare module 'smpte-timecode' {
  interface Label {
    readonly frameCount: number;
    toString(): string;
  }
  export default function Timecode(time: number | string, frameRate: number, dropFrame: boolean): Label;
}

declare module 'webvtt-parser' {
  interface TreeNode {
    readonly type: 'object' | 'text' | 'timestamp';
    readonly value?: string | number;
    readonly children?: readonly TreeNode[];
  }
  interface ParsedCue {
    readonly id: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly tree: TreeNode;
  }
  export class WebVTTParser {
    parse(text: string, mode?: 'metadata'): { readonly cues: readonly ParsedCue[] };
  }
}
