import { readdirSync, readFileSync } from 'node:fs';

/** The packages that a build took files of: folder and what package.json says, in the order of their names. */
export function bundledPackages(root, inputs) {
	const folders = inputs.map(path => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0]).filter(Boolean);
	return [...new Set(folders)]
		.sort()
		.map(folder => ({ folder, ...JSON.parse(readFileSync(`${root}${folder}/package.json`, 'utf8')) }));
}

/** Their licenses, one after the other: they ask to go with every copy. */
export function licenses(root, packages) {
	return packages
		.map(({ folder, name, version, license, author }) => {
			const file = readdirSync(root + folder).find(each => /^licen[cs]e/i.test(each));
			if (!file && license !== 'MIT') throw new Error(`${name} has no license file: it cannot be bundled`);
			const text = file ? readFileSync(`${root}${folder}/${file}`, 'utf8').trim() : mit(root, author?.name ?? author);
			return `${name} ${version} (${license})\n\n${text}\n`;
		})
		.join(`\n${'-'.repeat(72)}\n\n`);
}

/** The MIT license, as this project holds it, for a package that names it and ships no copy. */
const mit = (root, author) =>
	readFileSync(`${root}LICENSE`, 'utf8')
		.trim()
		.replace(/^Copyright .*$/m, `Copyright (c) ${author}`);

/** A software bill of materials of what is bundled, as CycloneDX 1.5 (ECMA-424). No date in it: the same build gives the same bytes. */
export function billOfMaterials({ name, version, license }, packages) {
	const component = (type, { name, version, license }) => ({
		type,
		'bom-ref': `pkg:npm/${name.replace('@', '%40')}@${version}`,
		name,
		version,
		purl: `pkg:npm/${name.replace('@', '%40')}@${version}`,
		licenses: [{ license: { id: license } }],
	});
	return {
		bomFormat: 'CycloneDX',
		specVersion: '1.5',
		version: 1,
		metadata: { component: component('application', { name, version, license }) },
		components: packages.map(each => component('library', each)),
	};
}
