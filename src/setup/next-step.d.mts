/** Types of `next-step.mjs`, for the tests. */

export type Family = 'debian' | 'fedora' | 'macos' | 'windows' | 'other';
export type Action = 'modules' | 'canvas' | 'system';

/** What was found on this machine. */
export interface Facts {
  /** Without the `v`: `20.20.2`. */
  readonly nodeVersion: string;
  readonly family: Family;
  /** May install system packages by itself. */
  readonly root: boolean;
  /** Those of ffmpeg and ffprobe that are not on the PATH. */
  readonly missingPrograms: readonly string[];
  /** node_modules against package-lock.json. */
  readonly modules: 'in step' | 'missing' | 'out of step';
  readonly canvasLoads: boolean;
  /** What this run has done already, in order. */
  readonly tried: readonly Action[];
}

export type SetupStep =
  | { readonly kind: 'ready' }
  | { readonly kind: 'modules' | 'canvas'; readonly says: string }
  | { readonly kind: 'system'; readonly packages: readonly string[]; readonly says: string }
  /** A person has to do something first; one line each. */
  | { readonly kind: 'stop'; readonly says: readonly string[] };

export declare const leastNode: number;
export declare const canvasPackages: readonly string[];
export declare function nextStep(facts: Facts): SetupStep;
