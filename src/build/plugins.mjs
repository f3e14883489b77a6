import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { dirname, join } from 'node:path';

// What the bundler does besides bundling.

/** The drawing library loads its own debugger when asked to; nobody asks here. */
export const withoutDevtools = {
	name: 'without-devtools',
	setup({ onResolve, onLoad }) {
		onResolve({ filter: /\/devtools\.js$/ }, ({ path }) => ({ path, namespace: 'nothing' }));
		onLoad({ filter: /.*/, namespace: 'nothing' }, () => ({ contents: 'export default {}' }));
	},
};

/** The command table alone, without what its commands do. */
export const withoutWork = {
	name: 'without-work',
	setup({ onResolve, onLoad }) {
		onResolve({ filter: /^\.\.?\// }, ({ path, kind, importer }) =>
			kind === 'dynamic-import' && /[\\/]cli[\\/](usage[\\/]|program\.ts$)/.test(importer)
				? { path, namespace: 'work' }
				: undefined,
		);
		onLoad({ filter: /.*/, namespace: 'work' }, () => ({ contents: 'export default {}' }));
	},
};

/** The program is one script, not a module, so that its compiled code can be cached: it is handed what it takes from outside. */
export const handedIn = {
	name: 'handed-in',
	setup({ onResolve, onLoad }) {
		onResolve({ filter: /.*/, namespace: 'builtin' }, ({ path }) => ({ path, external: true }));
		onResolve({ filter: /.*/ }, ({ path }) => (isBuiltin(path) ? { path, namespace: 'builtin' } : undefined));
		// The command line library loads it for commands that are programs of their own; here none is.
		onLoad({ filter: /^node:child_process$/, namespace: 'builtin' }, ({ path }) => ({
			contents: ['spawn', 'execFileSync']
				.map(name => `exports.${name} = (...all) => require('${path}').${name}(...all);`)
				.join(''),
		}));
		onLoad({ filter: /.*/, namespace: 'builtin' }, ({ path }) => ({
			contents: `module.exports = require(${JSON.stringify(path)})`,
		}));
		// Preferences are read after the first frame and stay outside.
		onResolve({ filter: /^conf$/ }, ({ path }) => ({ path, namespace: 'outside' }));
		onLoad({ filter: /.*/, namespace: 'outside' }, ({ path }) => ({
			contents: `export default (await importing(${JSON.stringify(path)})).default`,
		}));
	},
};

/** Files that are found by being there: `import.meta.glob` of folders, as the test runner has it, for files named `all.ts`. */
export const foundFiles = {
	name: 'found-files',
	setup({ onLoad }) {
		onLoad({ filter: /[\\/]src[\\/].*[\\/]all\.ts$/ }, ({ path }) => {
			const files = [];
			const text = readFileSync(path, 'utf8').replace(
				/import\.meta\.glob<object>\((.*?), \{ eager: true \}\)/,
				(_, folders) => {
					for (const [, folder] of folders.matchAll(/'(\.\/[\w-]+)\/\*\.ts'/g)) {
						for (const name of readdirSync(join(dirname(path), folder))) files.push(`${folder}/${name}`);
					}
					return `{ ${files.sort().map((file, index) => `'${file}': file${index}`)} }`;
				},
			);
			const imports = files.map((file, index) => `import * as file${index} from '${file}';`);
			return { contents: `${imports.join('')}${text}`, loader: 'ts' };
		});
	},
};
