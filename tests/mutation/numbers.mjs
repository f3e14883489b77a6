// The mutation tool spoils no numbers by itself and takes no mutators from outside: its own list is added to.
import { allMutators } from '../../node_modules/@stryker-mutator/instrumenter/dist/src/mutators/mutate.js';

const spoilt = value => (value === 0 ? 1 : value * 1.25);

/** Every written number of the model, a quarter more. Numbers in types and names of fields stay. */
allMutators.push({
	name: 'NumericLiteral',
	*mutate(path) {
		if (!path.isNumericLiteral() || path.parentPath.isTSLiteralType() || path.key === 'key') return;
		if (!/quantities.model/.test(path.hub?.file?.opts.filename ?? '')) return;
		yield { type: 'NumericLiteral', value: spoilt(path.node.value) };
	},
});

const words = new Set(['id', 'label', 'formula', 'source', 'nature', 'kind', 'unit', 'shown', 'expensive']);

/** What a quantity is called, how it is printed and in which order it is worked out is no arithmetic: other tests see it. */
export const strykerPlugins = [
	{
		kind: 'Ignore',
		name: 'words',
		value: {
			shouldIgnore: path => (path.isObjectProperty() && words.has(path.node.key.name) ? 'words for people' : undefined),
		},
	},
];
