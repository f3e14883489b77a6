import { readdirSync, readFileSync } from 'node:fs';

/** The licences of the packages that a build took files of, one after the other: they ask to go with every copy. */
export function licences(root, inputs) {
	const folders = inputs.map(path => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0]).filter(Boolean);
	return [...new Set(folders)]
		.sort()
		.map(folder => {
			const { name, version, license } = JSON.parse(readFileSync(`${root}${folder}/package.json`, 'utf8'));
			const file = readdirSync(root + folder).find(each => /^licen[cs]e/i.test(each));
			if (!file) throw new Error(`${name} has no licence file: it cannot be bundled`);
			const text = readFileSync(`${root}${folder}/${file}`, 'utf8').trim();
			return `${name} ${version} (${license})\n\n${text}\n`;
		})
		.join(`\n${'-'.repeat(72)}\n\n`);
}
