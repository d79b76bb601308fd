/**
 * English words that decide whether a sentence states something, and what. Common practice of people who talk a puzzle
 * through; collected by hand.
 */

function wordsOf(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/));
}

/** A sentence with one of these supposes, compares or weighs cases: it states nothing about the board. */
export const hypothetical = wordsOf(`
  if suppose supposing supposed assume assuming imagine imagining say unless whether would were could might may maybe
  perhaps either both can wonder wondering pretend otherwise when until before whichever wherever try trying
  only just where what which who how why`);

/** What a number counts, if it stands right before, or one word before. */
export const counted = wordsOf(`
  cell cells digit digits place places candidate candidates number numbers value values option options possibility
  possibilities row rows column columns box boxes line lines house houses link links chain chains group groups colour
  colours side sides end ends step steps time times way ways case cases set sets corner corners square squares pair pairs
  triple triples left more others other open unsolved solutions solution minutes seconds things thing pincers petals`);

/** Before a digit: it is not there. */
export const refusing = wordsOf(`
  not no isnt arent wasnt cant cannot doesnt dont wont never without neither nor nothing lose loses losing lost`);

/** A candidate goes. */
export const removing = wordsOf(`
  remove removes removed removing eliminate eliminates eliminated eliminating strike strikes struck striking cross
  crosses crossed crossing erase erases erased delete deletes deleted gone disappears vanishes`);

/** A digit is written. */
export const placing = wordsOf(`
  put puts place places placed write writes written fill fills enter enters goes go must has becomes gets takes lands`);

/** "row three column five is a seven". */
export const standingVerbs = wordsOf('is s equals holds');

/** Before a name: the argument is compared, refused, or spoken of elsewhere. */
export const uncertainNames = wordsOf(`
  not isnt no like almost nearly than instead another next earlier before last previous looks unlike without ordinary
  usual longer called plain`);
