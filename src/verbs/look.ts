/**
 * The options of every verb that draws.
 */
import { file, text } from './kinds.ts';

export const look = file("use this look instead of the scene's own");
export const as = text('<version>', "draw on the frame of one of the scene's `versions`");
