/** Types of `facts.mjs`, for the tests. */
import type { Action, Facts, Family } from './next-step.d.mts';

export declare function gatherFacts(root: string, tried: readonly Action[]): Facts;
export declare function modulesAgainstLock(root: string): Facts['modules'];
export declare function missingPrograms(
  names: readonly string[],
  environment: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string[];
export declare function familyOf(platform: NodeJS.Platform, osRelease: string): Family;
