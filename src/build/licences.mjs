import { readdirSync, readFileSync } from 'node:fs';

/** The licences of the packages that a build took files of, one after the other: they ask to go with every copy. */
export function licences(root, inputs) {
	const folders = inputs.map(path => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0]).filter(Boolean);
	return [...new Set(folders)]
		.sort()
		.map(folder => {
			const { name, version, license, author } = JSON.parse(readFileSync(`${root}${folder}/package.json`, 'utf8'));
			const file = readdirSync(root + folder).find(each => /^licen[cs]e/i.test(each));
			if (!file && license !== 'MIT') throw new Error(`${name} has no licence file: it cannot be bundled`);
			const text = file ? readFileSync(`${root}${folder}/${file}`, 'utf8').trim() : mit(root, author?.name ?? author);
			return `${name} ${version} (${license})\n\n${text}\n`;
		})
		.join(`\n${'-'.repeat(72)}\n\n`);
}

/** The MIT licence, as this project holds it, for a package that names it and ships no copy. */
const mit = (root, author) =>
	readFileSync(`${root}LICENSE`, 'utf8')
		.trim()
		.replace(/^Copyright .*$/m, `Copyright (c) ${author}`);
