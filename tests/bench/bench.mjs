// The command and its parts beside their floors and peers, all in one run: ratios count, milliseconds depend on the machine.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { foundFiles } from '../../src/build/plugins.mjs';
import { lines } from './lines.mjs';
import { benchLog } from './log.mjs';
import { builds, command, inTurn, root, table, timeOf } from './measure.mjs';

const runs = Number(process.env.RUNS ?? 30);
const folder = mkdtempSync(join(tmpdir(), 'swap-audit-bench-'));
const bundled = name => join(folder, `${name}.mjs`);
await build({
	absWorkingDir: root,
	entryPoints: ['tests/bench/peer.ts', 'tests/bench/warm.ts', 'tests/bench/line-sheets.ts'],
	outdir: folder,
	outExtension: { '.js': '.mjs' },
	bundle: true,
	minify: true,
	platform: 'node',
	format: 'esm',
	banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
	logLevel: 'warning',
	plugins: [foundFiles],
});
const whole = (name, ...flags) => timeOf([command, 'audit', builds[name] ?? name, ...flags]);
// The peer knows nothing of plugs: beside it neither side has any.
const { plugs: _, ...rest } = JSON.parse(readFileSync(builds.boosted, 'utf8'));
const withoutPlugs = join(folder, 'without-plugs.sheet.json');
writeFileSync(withoutPlugs, JSON.stringify(rest));
table(
	`cold starts, ${runs} runs`,
	inTurn(runs, {
		'node -e 0': () => timeOf(['-e', '0']),
		'npm --version': () => timeOf(['--version'], { program: 'npm' }),
		'--version': () => timeOf([command, '--version']),
		'--help': () => timeOf([command, '--help']),
		'same sheet, quantities, json-rules-engine': () => timeOf([bundled('peer'), withoutPlugs]),
		'the same, 400 draws by plain functions': () => timeOf([bundled('peer'), withoutPlugs, '400']),
		'the same without limits of the cylinder': () => timeOf([bundled('peer'), withoutPlugs, '400', 'formulas']),
		'audit, boosted, no plugs, 400 draws': () => whole(withoutPlugs),
		'audit, boosted, 400 draws': () => whole('boosted'),
		'audit, boosted, no bands': () => whole('boosted', '--draws', '0'),
		'audit, unboosted, 400 draws': () => whole('unboosted'),
	}),
);
table(
	`the same answers: in what share of the draws each rule fails, ${Math.ceil(runs / 10)} runs`,
	inTurn(Math.ceil(runs / 10), {
		'audit, boosted, no plugs, 400 draws': () => whole(withoutPlugs),
		'json-rules-engine, 400 draws, judged': () => timeOf([bundled('peer'), withoutPlugs, '400', 'each']),
	}),
);
timeOf([bundled('warm')], { stdio: 'inherit' });

await lines(bundled('line-sheets'), folder);
benchLog(100);
rmSync(folder, { recursive: true, force: true });
console.log();
await import('./first-frame.mjs');
await import('./key-to-frame.mjs');
