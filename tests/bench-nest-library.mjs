// The published sets by a general-purpose packing library, for comparison with bench-nest: no rule of straight cuts,
// no bound. Run: PACKING_LIBRARY=folder/node_modules/maxrects-packer/dist/maxrects-packer.mjs RC_SHARED=folder node bench-nest-library.mjs
import fs from 'fs';
import path from 'path';

if (!process.env.PACKING_LIBRARY || !fs.existsSync(process.env.PACKING_LIBRARY)) {
  console.log('PACKING_LIBRARY names no file: nothing is run');
  process.exit(0);
}
const library = await import(path.resolve(process.env.PACKING_LIBRARY));

function pack(numbers) {
  const width = numbers[1];
  const cuts = [];
  for (let i = 2; i + 1 < numbers.length; i += 2)
    cuts.push({ width: numbers[i], height: numbers[i + 1] });
  cuts.sort((a, b) => b.height - a.height || b.width - a.width);
  const options = { smart: true, pot: false, square: false, allowRotation: false, border: 0 };
  const packer = new library.MaxRectsPacker(width, 1000000, 0, options);
  packer.addArray(cuts);
  return Math.max(...packer.bins[0].rects.map((cut) => cut.y + cut.height));
}

const root = path.join(process.env.RC_SHARED || '', 'packing');
for (const set of ['hopper_turton_C', 'hopper_T_guillotine', 'beng', 'cgcut', 'gcut']) {
  const folder = path.join(root, set);
  if (!fs.existsSync(folder))
    continue;
  console.log(`\n${set}\ninstance        n     used      ms`);
  for (const file of fs.readdirSync(folder).filter((name) => name.endsWith('.txt')).sort()) {
    const numbers = fs.readFileSync(path.join(folder, file), 'utf8').trim().split(/\s+/).map(Number);
    const begin = process.hrtime.bigint();
    const used = pack(numbers);
    const ms = Number(process.hrtime.bigint() - begin) / 1e6;
    console.log(`${file.replace('.txt', '').padEnd(12)} ${String(numbers[0]).padStart(4)} ` +
                `${String(used).padStart(8)} ${ms.toFixed(2).padStart(7)}`);
  }
}
