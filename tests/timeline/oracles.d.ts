/** The parts in use of libraries that bring no types, or (media-captions) types that this compiler cannot follow. */
declare module 'smpte-timecode' {
  interface Label {
    readonly frameCount: number;
    toString(): string;
  }
  export default function Timecode(time: number | string, frameRate: number, dropFrame: boolean): Label;
}

declare module 'webvtt-parser' {
  export interface TreeNode {
    /** The root has none. */
    readonly type?: 'object' | 'text' | 'timestamp';
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

declare module 'media-captions' {
  interface ParsedCue {
    readonly id: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly text: string;
  }
  export function parseText(
    text: string,
    options: { readonly type: 'vtt' | 'srt' },
  ): Promise<{ readonly cues: readonly ParsedCue[] }>;
}
