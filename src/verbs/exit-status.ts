/** What each exit status means: the one table of them. */
export const exitStatus = {
  sound: 0,
  unsound: 1,
  unusable: 2,
  machineFailed: 3,
  interrupted: 130,
} as const;

/** As `--help` prints them. */
export const statusMeanings: Readonly<Record<(typeof exitStatus)[keyof typeof exitStatus], string>> = {
  0: 'done; the scene is sound',
  1: 'the scene is unsound, the plan does not reach the solution, or the board is not found',
  2: 'the input or the call is unusable',
  3: 'the machine failed: no ffmpeg, a full disk',
  130: 'interrupted',
};
