/** Text and fonts of each page of a PDF, read by a second library (Mozilla's PDF.js): node pdf-text.mjs FILE prints JSON. */
import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

const task = getDocument({
  data: new Uint8Array(readFileSync(process.argv[2])),
  verbosity: 0,
  useSystemFonts: false,
});
const file = await task.promise;
const pages = [];
for (let number = 1; number <= file.numPages; number += 1) {
  const page = await file.getPage(number);
  const { items } = await page.getTextContent();
  await page.getOperatorList();
  const names = new Set(items.map(({ fontName }) => fontName).filter(Boolean));
  const fonts = [...names].map((name) => {
    const font = page.commonObjs.get(name);
    return { name: font.name, embedded: font.missingFile !== true && !font.systemFontInfo };
  });
  const [, , width, height] = page.view;
  pages.push({
    text: items.map(({ str, hasEOL }) => str + (hasEOL ? '\n' : '')).join(''),
    fonts,
    width,
    height,
  });
}
const { info } = await file.getMetadata();
process.stdout.write(JSON.stringify({ pages, info }));
await task.destroy();
