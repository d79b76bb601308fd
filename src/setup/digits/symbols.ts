/** What the classifier tells apart: the symbols of boards up to 16 cells across, and all that is none of them. */
export const symbols = '123456789ABCDEFG';
export const otherClass = symbols.length;
export const classCount = symbols.length + 1;
