/** Distance tables pasted from spreadsheets and typed from paper. */
import { GridFault, gridOf, gridText } from '../../src/web/page/handbook/grid.js';

const READ = {
  temperaturesC: [-10, 0, 20],
  pressureAltitudesFt: [0, 2000],
  feet: [
    [780, 835, 960],
    [925, 1000, 1150],
  ],
};

test.each([
  ['tabs, as a spreadsheet copies them', 'ft\t-10\t0\t20\n0\t780\t835\t960\n2000\t925\t1000\t1150'],
  ['semicolons and Windows line ends', '; -10; 0; 20\r\n0; 780; 835; 960\r\n2000; 925; 1000; 1150\r\n'],
  ['blanks, empty lines and a typographic minus', ' −10 0 20\n\n0  780 835 960\n\n2000 925 1000 1150'],
  ['thousands with commas', 'PA -10 0 20\n0 780 835 960\n2,000 925 1,000 1,150'],
  ['units', 'ft -10C 0°C 20C\n0ft 780 835 960\n2000ft 925 1000 1150'],
  ['bars', '| -10 | 0 | 20 |\n| 0 | 780 | 835 | 960 |\n| 2000 | 925 | 1000 | 1150 |'],
  ['commas between figures', 'ft, -10, 0, 20\n0, 780, 835, 960\n2000, 925, 1000, 1150'],
])('%s', (_what, text) => {
  expect(gridOf(text)).toEqual(READ);
});

test('what it writes it reads', () => {
  expect(gridOf(gridText(READ))).toEqual(READ);
});

test.each([
  ['', /line of temperatures and two pressure altitudes/],
  ['ft 0 20\n0 780 960', /two pressure altitudes/],
  ['ft 0 20\n0 780 960\n2000 925', /Line 3 has 1 distances for 2 temperatures/],
  ['ft 0 20\n0 780 96O\n2000 925 1100', /Line 2: “96O” is no figure/],
])('%j is no table', (text, says) => {
  expect(() => gridOf(text)).toThrow(GridFault);
  expect(() => gridOf(text)).toThrow(says);
});
