/**
 * Texts that cannot be read, each with all that is said about it. A fault is marked as it would be under the text.
 */
import { describe, expect, test } from 'vitest';
import { gridOf } from '../../../src/grid/grid.ts';
import { marked, type ReaderName, readers } from './readings.ts';

type Table = Readonly<Partial<Record<ReaderName, readonly (readonly [text: string, ...faults: string[]])[]>>>;

const nineByNine: Table = {
  cells: [
    ['', ' nothing is written here; cells are written r3c2, r12c34 or b2p13'],
    [' ', '^ nothing is written here; cells are written r3c2, r12c34 or b2p13'],
    ['x', '^ "x" cannot be read; cells are written r3c2, r12c34 or b2p13'],
    ['r3', '^^ "r3" names a house; cells are written r3c2, r12c34 or b2p13'],
    ['c58', '^^^ "c58" names houses; cells are written r3c2, r12c34 or b2p13'],
    ['7', '^ "7" names a digit alone; cells are written r3c2, r12c34 or b2p13'],
    ['7r3c5', '^^^^^ "7r3c5" names a candidate; cells are written r3c2, r12c34 or b2p13'],
    ['7c5', '^^^ "7c5" names the places of a digit in a house; cells are written r3c2, r12c34 or b2p13'],
    ['c5r3', '^^^^ "c5r3" puts the column before the row; cells are written r3c2, r12c34 or b2p13'],
    ['r3c', '^^^ "r3c" lacks the number of the column; cells are written r3c2, r12c34 or b2p13'],
    ['rc5', '^^^ "rc5" lacks the number of the row; cells are written r3c2, r12c34 or b2p13'],
    ['b2p', '^^^ "b2p" lacks the position in the box; cells are written r3c2, r12c34 or b2p13'],
    ['bp3', '^^^ "bp3" lacks the number of the box; cells are written r3c2, r12c34 or b2p13'],
    ['p3', '^^ "p3" is a position without its box; cells are written r3c2, r12c34 or b2p13'],
    ['r3c5x', '    ^ "x" after "r3c5" cannot be read; cells are written r3c2, r12c34 or b2p13'],
    ['r0c3', ' ^ there is no row 0: rows run from 1 to 9'],
    ['r10c3', '  ^ "10" is read figure by figure, and there is no row 0: rows run from 1 to 9'],
    ['r3c0', '   ^ there is no column 0: columns run from 1 to 9'],
    ['b0p1', ' ^ there is no box 0: boxes run from 1 to 9'],
    ['b2p0', '   ^ there is no position 0: positions in a box run from 1 to 9'],
    ['r1c11', '    ^ 1 stands twice in "11"; write each column once'],
    ['r9c3|', '    ^ no cell stands after this |; cells are joined as in r1c3|r4c1'],
    ['r9c3|r8 r1c1', '    ^^^ no cell stands after this |; cells are joined as in r1c3|r4c1'],
    ['r3c5=7', '^^^^^^ "r3c5=7" is a conclusion; cells are written r3c2, r12c34 or b2p13'],
    [
      'r3 r3c0, x',
      '^^ "r3" names a house; cells are written r3c2, r12c34 or b2p13',
      '      ^ there is no column 0: columns run from 1 to 9',
      '         ^ "x" cannot be read; cells are written r3c2, r12c34 or b2p13',
    ],
    [
      'r 3c5',
      '^ "r" cannot be read; cells are written r3c2, r12c34 or b2p13',
      '  ^^^ "3c5" names the places of a digit in a house; cells are written r3c2, r12c34 or b2p13',
    ],
    ['r3c5;r4c5', '    ^^^^^ ";r4c5" after "r3c5" cannot be read; cells are written r3c2, r12c34 or b2p13'],
  ],
  candidates: [
    ['r3c5', '^^^^ "r3c5" names a cell; candidates are written 4r3c2, 14r3c2 or 4r12c3'],
    ['7r3', '^^^ "7r3" names the places of a digit in a house; candidates are written 4r3c2, 14r3c2 or 4r12c3'],
    ['7', '^ "7" names a digit alone; candidates are written 4r3c2, 14r3c2 or 4r12c3'],
    ['0r3c5', '^ there is no digit 0: digits run from 1 to 9'],
    ['07r3c5', '^ there is no digit 0: digits run from 1 to 9'],
    ['77r3c5', ' ^ 7 stands twice in "77"; write each digit once'],
    ['(7r3c5', '^^ this bracket is not closed; write (7)'],
    ['(78', '^^^ "(78" cannot be read; candidates are written 4r3c2, 14r3c2 or 4r12c3'],
    ['7)r3c5', '^^^^^^ "7)r3c5" closes a bracket that is not open; candidates are written 4r3c2, 14r3c2 or 4r12c3'],
    ['r3c5=7', '^^^^^^ "r3c5=7" is a conclusion; as candidates it is written 7r3c5'],
    ['r12c5<>78', '^^^^^^^^^ "r12c5<>78" is a conclusion; as candidates it is written 78r12c5'],
    ['7r3c5|8r4c5', '     ^^^^^^ no cell stands after this |; cells are joined as in r1c3|r4c1'],
  ],
  houses: [
    ['r3c5', '^^^^ "r3c5" names a cell; houses are written r3, c24 or b2'],
    ['r0', ' ^ there is no row 0: rows run from 1 to 9'],
    ['7', '^ "7" names a digit alone; houses are written r3, c24 or b2'],
    ['7c5', '^^^ "7c5" names the places of a digit in a house; houses are written r3, c24 or b2'],
    ['d3', '^^ "d3" cannot be read; houses are written r3, c24 or b2'],
    ['c', '^ "c" cannot be read; houses are written r3, c24 or b2'],
    ['r33', '  ^ 3 stands twice in "33"; write each row once'],
  ],
  sets: [
    [
      '7r1c5',
      '^^^^^ "7r1c5" names a candidate; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    [
      'r9',
      '^^ "r9" names a house; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    [
      '7',
      '^ "7" names a digit alone; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    [
      '7c',
      '^^ "7c" cannot be read; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    [
      'step',
      '^^^^ "step" has no name after it; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    [
      'step, 7c5',
      '^^^^ "step" has no name after it; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    ['steps towers', '^^^^^ "steps" is not known; write step'],
    ['stpe towers', '^^^^ "stpe" is not known; write step'],
    [
      'step a_b',
      '      ^^ "_b" after "step a" cannot be read; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    ['0c5', '^ there is no digit 0: digits run from 1 to 9'],
    ['7c0', '  ^ there is no column 0: columns run from 1 to 9'],
    ['(7c5', '^^ this bracket is not closed; write (7)'],
    [
      '7b5p',
      '^^^^ "7b5p" lacks the position in the box; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
    [
      'r1c5=7',
      '^^^^^^ "r1c5=7" is a conclusion; a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)',
    ],
  ],
  conclusions: [
    [
      '',
      ' nothing is written here; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    ['r1c1><4', '    ^^ "><" stands where <> or = is expected; write r1c1<>4 (impossible) or r1c1=4 (placed)'],
    [
      'r1c1<>99x',
      '       ^ 9 stands twice in "99"; write each digit once',
      '        ^ "x" after "r1c1<>99" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    ['r1c1<4', '    ^ "<" stands where <> or = is expected; write r1c1<>4 (impossible) or r1c1=4 (placed)'],
    ['r1c1!=4', '    ^^ "!=" stands where <> or = is expected; write r1c1<>4 (impossible) or r1c1=4 (placed)'],
    ['r1c1==4', '    ^^ "==" stands where <> or = is expected; write r1c1<>4 (impossible) or r1c1=4 (placed)'],
    ['r1c1 4', '^^^^^^ no sign stands between "r1c1" and "4"; write r1c1<>4 (impossible) or r1c1=4 (placed)'],
    ['r0c3<>5', ' ^ there is no row 0: rows run from 1 to 9'],
    ['r1c1<>0', '      ^ there is no digit 0: digits run from 1 to 9'],
    ['r1c1<>10', '       ^ "10" is read figure by figure, and there is no digit 0: digits run from 1 to 9'],
    ['r1c1<>', '^^^^^^ nothing stands after "r1c1<>" where a digit is expected; write r1c1<>4'],
    ['r1c1=', '^^^^^ nothing stands after "r1c1=" where a digit is expected; write r1c1=4'],
    ['r1c1<>x', '^^^^^^^ "x" stands after "r1c1<>" where a digit is expected; write r1c1<>4'],
    [
      'r1c1',
      '^^^^ "r1c1" names a cell; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      '7r1c1',
      '^^^^^ "7r1c1" names a candidate; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      '-r1c1',
      '^^^^^ "-r1c1" has no digit after its sign; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      '-7c1',
      '^^^^ "-7c1" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      '- 7',
      '^ "-" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
      '  ^ "7" names a digit alone; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    ['r8c4=68', '^^^^^^^ "r8c4=68" puts 2 digits into one cell; a placement has one digit, as in r3c2=4'],
    ['+68r8c4', '^^^^^^^ "+68r8c4" puts 2 digits into one cell; a placement has one digit, as in r3c2=4'],
    [
      'r1c1=7=8',
      '      ^^ "=8" after "r1c1=7" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      '8=r8c4',
      '^^^^^^ "8=r8c4" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      'r1c7<>7,9',
      '        ^ "9" names a digit alone; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    ['either', '^^^^^^ either names two candidates or more, and here is none; write either 4r3c2 4r1c3'],
    ['either 7r1c5', '^^^^^^^^^^^^ either names two candidates or more, and here is one; write either 4r3c2 4r1c3'],
    [
      'either 7r1c5 7r1c5',
      '^^^^^^^^^^^^^^^^^^ either names two candidates or more, and here is one; write either 4r3c2 4r1c3',
    ],
    ['either 7r1c5 or 7r2c8', '             ^^ leave out "or"; write either 4r3c2 4r1c3'],
    ['ether 7r1c5 7r2c8', '^^^^^ "ether" is not known; write either'],
    [
      'either r1c5 r2c8',
      '       ^^^^ "r1c5" names a cell; either names candidates, as in either 4r3c2 4r1c3',
      '            ^^^^ "r2c8" names a cell; either names candidates, as in either 4r3c2 4r1c3',
    ],
    [
      'all',
      '^^^ "all" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      'r3<>7',
      '^^^^^ "r3<>7" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    ['either 7r1c5, and 7r2c8', '              ^^^ leave out "and"; write either 4r3c2 4r1c3'],
    [
      'r1c1\n4',
      '^^^^ "r1c1" names a cell; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
      '     ^ "4" names a digit alone; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      '=> r1c1<>7',
      '^^ "=>" cannot be read; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    [
      'r1c1><4 r0c1=5, 7',
      '    ^^ "><" stands where <> or = is expected; write r1c1<>4 (impossible) or r1c1=4 (placed)',
      '         ^ there is no row 0: rows run from 1 to 9',
      '                ^ "7" names a digit alone; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
  ],
  chain: [
    ['', ' no chain is written here; it is nodes and links, as in (4)r1c2=r3c2-r3c4=r2c4'],
    ['(7)r1c5', '^^^^^^^ a chain needs a link; write at least two nodes, as in (4)r1c2=r3c2'],
    ['(7)r1c5=', '^^^^^^^^ no node stands after this link; write at least two nodes, as in (4)r1c2=r3c2'],
    ['(7r1c5=r9c5-r9c8=r2c8', '^^ this bracket is not closed; write (7)r1c5'],
    ['(7r1c5)=r9c5', '^^^^^^^ a bracket holds the digits alone; write (7)r1c5'],
    ['(7=8r1c2-(8)r4c2', '^^^^ this bracket is not closed; write (7=8)r1c2'],
    [
      '(7=8=9)r1c2',
      '^^^^^^ a bracket holds two nodes at most; write the next one after a link of its own, as in (4=1)r3c2-(1=2)r3c4',
    ],
    [
      '(7=)r1c5-r2c5',
      '^^^^ a digit is missing in this bracket; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    [
      '(=7)r1c5-r2c5',
      '^^^^ a digit is missing in this bracket; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    [
      '()r1c5=r9c5',
      '^^ a digit is missing in this bracket; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    ['7=8r1c2-(8)r4c2', '^^^^^^^ a link inside a cell stands in a bracket; write (7=8)r1c2'],
    ['(7=r1c5', '^^ no cells stand after "(7"; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell'],
    ['(8', '^^ no cells stand after "(8"; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell'],
    ['r1c5=r9c5', '^^^^ the first node needs its digits; write (4)r1c5, with your digit'],
    [
      '(7)r1c5==r9c5',
      '        ^ no node stands before this link; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    ['=r1c5', '^ no node stands before this link; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell'],
    ['(7)r1c5 r9c5', '        ^ no link stands before this node; between two nodes stands = (strong) or - (weak)'],
    [
      '(7)r1c5(8)r9c5=r2c2',
      '       ^ no link stands before this node; between two nodes stands = (strong) or - (weak)',
    ],
    [
      '(7)r1=r9c5',
      '^^^^^ "(7)r1" names the places of a digit in a house; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    [
      '(7)=r9c5-r9c8',
      '^^^ no cells stand after "(7)"; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    [
      '(7)r1c5=c5r9-r9c8',
      '        ^^^^ "c5r9" puts the column before the row; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    [
      '(7)r1c5=x-r9c8',
      '        ^ "x" cannot be read; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
    ['(7)r1c5=r10c5', '          ^ "10" is read figure by figure, and there is no row 0: rows run from 1 to 9'],
    ['(0)r1c5=r9c5', ' ^ there is no digit 0: digits run from 1 to 9'],
    ['(77)r1c5=r9c5', '  ^ 7 stands twice in "77"; write each digit once'],
    [
      '(7)r1c5=r9c5 r1c7<>7',
      '             ^^^^^^^ "r1c7<>7" stands in the chain; conclusions stand after an arrow, as in => r3c2<>4',
    ],
    [
      '(7)r1c5=r9c5<>7',
      '            ^^^ "<>7" stands in the chain; conclusions stand after an arrow, as in => r3c2<>4',
    ],
    [
      '(7)r1c5=r9c5, r9c8',
      '            ^ "," does not belong in a chain; between two nodes stands = (strong) or - (weak)',
    ],
    ['(7)r1c5=r9c5)', '            ^ ")" does not belong in a chain; between two nodes stands = (strong) or - (weak)'],
    [
      '(7)r1c5=r9c5 =>',
      '             ^^ no conclusion stands after this arrow; write one, as in => r3c2<>4, or leave it out',
    ],
    [
      '(7)r1c5=r9c5 => 7r1c5',
      '                ^^^^^ "7r1c5" names a candidate; a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3',
    ],
    ['=> r1c1<>7', ' no chain is written here; it is nodes and links, as in (4)r1c2=r3c2-r3c4=r2c4'],
    [
      '(7)r1c1|r5c5=r2c2',
      '^^^^^^^^^^^^ no house holds all cells of "(7)r1c1|r5c5"; those of one node lie in one row, column or box',
    ],
    ['(7)r1c5=r1c5', '^^^^^^^^^^^^ this link leads from 7r1c5 to itself; name two different ends'],
    [
      '(7)r1c5=r9c5-r9c8=r1c8-r1c5=',
      '                       ^^^^^ this loop is closed twice, by its first node and by a link that leads nowhere; leave out one of them',
    ],
    [
      '(7)r1c5=r9c5-r9c8=r1c8=>r1c1><7',
      '                            ^^ "><" stands where <> or = is expected; write r1c1<>7 (impossible) or r1c1=7 (placed)',
    ],
    [
      '(7)r0c5=r9c0-(0)r9c8=x',
      '    ^ there is no row 0: rows run from 1 to 9',
      '           ^ there is no column 0: columns run from 1 to 9',
      '              ^ there is no digit 0: digits run from 1 to 9',
      '                     ^ "x" cannot be read; a node is written (4)r3c2, or (4=1)r3c2 with a link inside the cell',
    ],
  ],
  deadly: [
    ['', ' nothing is written here; a deadly pattern is digits and cells (12r34c24), or grid, or grid without 4r3c2'],
    [
      'r34c58',
      '^^^^^^ "r34c58" names cells; a deadly pattern is digits and cells (12r34c24), or grid, or grid without 4r3c2',
    ],
    [
      '12',
      '^^ "12" names digits alone; a deadly pattern is digits and cells (12r34c24), or grid, or grid without 4r3c2',
    ],
    [
      '12c5',
      '^^^^ "12c5" names the places of digits in a house; a deadly pattern is digits and cells (12r34c24), or grid, or grid without 4r3c2',
    ],
    ['gird', '^^^^ "gird" is not known; write grid'],
    ['grid 7r1c5', '     ^^^^^ "7r1c5" stands after grid; write grid alone, or grid without 4r3c2 1r4c4'],
    ['grid wihtout 7r1c5', '     ^^^^^^^ "wihtout" is not known; write without'],
    ['grid without', '             nothing is written here; candidates are written 4r3c2, 14r3c2 or 4r12c3'],
    ['grid without r1c5', '             ^^^^ "r1c5" names a cell; candidates are written 4r3c2, 14r3c2 or 4r12c3'],
    ['01r34c58', '^ there is no digit 0: digits run from 1 to 9'],
    ['grid, 12r34c58', '      ^^^^^^^^ "12r34c58" stands after grid; write grid alone, or grid without 4r3c2 1r4c4'],
  ],
  only: [
    ['', ' nothing is written here; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house'],
    [
      '4b5',
      '^^^ the word in and cells must follow "4b5"; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
    [
      '4b5 r4c46',
      '^^^ the word in and cells must follow "4b5"; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
    [
      '4b5 in',
      '^^^^^^ no cells follow "4b5 in"; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
    ['4b5 on r4c4', '    ^^ "on" is not known; write in'],
    ['4b5 in r1c1', '       ^^^^ r1c1 lies outside b5; its cells are r456c456'],
    ['4b5 in r4c4 r1c12', '            ^^^^^ r1c12 lie outside b5; its cells are r456c456'],
    ['4b56 in r4c4', '^^^^ "4b56" names 2 houses; write each with its own cells, as in 4b2 in r12c3'],
    [
      '4r3c3 in r4c4',
      '^^^^^ "4r3c3" names a candidate; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
    [
      'b5 in r4c4',
      '^^ "b5" names a house; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
    [
      '4b5 in 5b5 in r4c4',
      '^^^^^^ no cells follow "4b5 in"; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
    [
      '4b5 in r4c4 x',
      '            ^ "x" cannot be read; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
    ['0b5 in r4c4', '^ there is no digit 0: digits run from 1 to 9'],
    ['4b0 in r4c4', '  ^ there is no box 0: boxes run from 1 to 9'],
    [
      '4b5 in r4',
      '       ^^ "r4" names a house; places are written 4b2 in r12c3: a digit, a house, in, and cells of the house',
    ],
  ],
  pencil: [
    [
      '28b9',
      '^^^^ "28b9" names the places of digits in a house; a pencil list is digits and cells, as in 14r3c2, 14r12c3 or 14b2p13',
    ],
    ['r9c1', '^^^^ "r9c1" names a cell; a pencil list is digits and cells, as in 14r3c2, 14r12c3 or 14b2p13'],
    ['28', '^^ "28" names digits alone; a pencil list is digits and cells, as in 14r3c2, 14r12c3 or 14b2p13'],
    ['28r9c1 3r9c1', '       ^^^^^ r9c1 has its list already, 28r9c1; write one list a cell'],
    [
      '28r9c1x',
      '      ^ "x" after "28r9c1" cannot be read; a pencil list is digits and cells, as in 14r3c2, 14r12c3 or 14b2p13',
    ],
    ['280r9c1', '  ^ "280" is read figure by figure, and there is no digit 0: digits run from 1 to 9'],
    [
      '28r9',
      '^^^^ "28r9" names the places of digits in a house; a pencil list is digits and cells, as in 14r3c2, 14r12c3 or 14b2p13',
    ],
  ],
  targets: [
    [
      '',
      ' nothing is written here; a mark is put on cells (r3c2), houses (c3, b2), candidates (4r3c2, 4c3) or a digit (4)',
    ],
    [
      'x',
      '^ "x" cannot be read; a mark is put on cells (r3c2), houses (c3, b2), candidates (4r3c2, 4c3) or a digit (4)',
    ],
    [
      'r1c5 c',
      '     ^ "c" cannot be read; a mark is put on cells (r3c2), houses (c3, b2), candidates (4r3c2, 4c3) or a digit (4)',
    ],
    ['7r0c5', '  ^ there is no row 0: rows run from 1 to 9'],
    ['0', '^ there is no digit 0: digits run from 1 to 9'],
    [
      'r1c5=7',
      '^^^^^^ "r1c5=7" is a conclusion; a mark is put on cells (r3c2), houses (c3, b2), candidates (4r3c2, 4c3) or a digit (4)',
    ],
    [
      'all',
      '^^^ "all" cannot be read; a mark is put on cells (r3c2), houses (c3, b2), candidates (4r3c2, 4c3) or a digit (4)',
    ],
  ],
};

const sixBySix: Table = {
  candidates: [
    ['7r1c1', '^ there is no digit 7: digits run from 1 to 6'],
    ['1r7c1', '  ^ there is no row 7: rows run from 1 to 6'],
    ['1r1c7', '    ^ there is no column 7: columns run from 1 to 6'],
    ['1b7p1', '  ^ there is no box 7: boxes run from 1 to 6'],
    ['1b1p7', '    ^ there is no position 7: positions in a box run from 1 to 6'],
  ],
  houses: [['b7', ' ^ there is no box 7: boxes run from 1 to 6']],
};

const grids = [
  { name: '9x9', grid: gridOf('3x3'), table: nineByNine },
  { name: '6x6', grid: gridOf('2x3'), table: sixBySix },
];

describe.each(grids)('$name', ({ grid, table }) => {
  describe.each(Object.keys(table) as ReaderName[])('%s', (name) => {
    test.each(table[name] ?? [])('%j', (text, ...faults) => {
      const reading = readers[name](grid, text);
      expect(reading.ok ? reading.value : marked(reading.faults)).toEqual(faults);
    });
  });
});
