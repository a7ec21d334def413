// A general-purpose packing library on problems that bench-nest sends, one a line: the roll's width, then width and length
// of each cut. Answers with the length used and the microseconds of packing. It packs freely, without turning, largest
// first. PACKING_LIBRARY names the module: in a folder outside the project `npm install maxrects-packer`, then
// FOLDER/node_modules/maxrects-packer/dist/maxrects-packer.mjs.
import path from 'path';
import readline from 'readline';

const library = await import(path.resolve(process.env.PACKING_LIBRARY));

function pack(numbers) {
  const cuts = [];
  for (let i = 1; i + 1 < numbers.length; i += 2)
    cuts.push({ width: numbers[i], height: numbers[i + 1] });
  cuts.sort((a, b) => b.height - a.height || b.width - a.width);
  const options = { smart: true, pot: false, square: false, allowRotation: false, border: 0 };
  const packer = new library.MaxRectsPacker(numbers[0], 1e12, 0, options);
  packer.addArray(cuts);
  return Math.max(0, ...packer.bins[0].rects.map((cut) => cut.y + cut.height));
}

pack([10, 1, 1, 2, 2]); // so that the first problem does not pay for the start
for await (const line of readline.createInterface({ input: process.stdin })) {
  const numbers = line.split(' ').map(Number);
  const begin = process.hrtime.bigint();
  const used = pack(numbers);
  console.log(`${used} ${Number(process.hrtime.bigint() - begin) / 1000}`);
}
