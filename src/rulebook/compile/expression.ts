import { type ASTNode, Environment } from '@marcbachmann/cel-js';
import type { Expression } from '../../expressions/tree.ts';
import type { Fields, Placed } from './fields.ts';
import { type Names, wordsFor } from './names.ts';
import type { Source } from './source.ts';
import { type Compiled, Refused, Walk } from './walk.ts';

/** Longer expressions are refused before they are parsed. In characters. */
const longest = 1000;
const grammar = new Environment({ limits: { maxDepth: 60, maxAstNodes: 400 } });

/**
 * Compiles a CEL text to a checked tree, or notes why not (with its place) and gives null.
 * An expression stands on one line, so that the place of a fault in it can be reported.
 */
export function compileExpression(source: Source, { text, offset }: Placed, names: Names): Compiled | null {
	const refuse = (message: string, at = 0): null => {
		source.report(offset + at, message);
		return null;
	};
	if (!source.hasVerbatim(text, offset))
		return refuse('an expression stands on one line, in no quotes or in single ones');
	if (text.length > longest)
		return refuse(`an expression has at most ${longest} characters, this one has ${text.length}: make it two rules`);
	let ast: ASTNode;
	try {
		ast = grammar.parse(text).ast;
	} catch (error) {
		const { range, summary } = error as { range?: { start: number }; summary?: string };
		const what = summary ?? (error as Error).message;
		return refuse(`not an expression: ${what}${mendFor(what, text)}`, range?.start);
	}
	try {
		return new Walk(names).walk(ast);
	} catch (error) {
		if (!(error instanceof Refused)) throw error;
		return refuse(error.message, error.at);
	}
}

/** What most often is behind an error of the grammar, and how to write it. */
function mendFor(what: string, text: string): string {
	if (/[<>=] *-?[\d.]+ +[a-z%]+$/i.test(text))
		return ' (a figure with its unit goes under thresholds:, and its name stands here)';
	if (what.includes('EOF')) return ' (it ends too early)';
	if (what.endsWith(': =')) return ' (compare with ==)';
	if (/: ('?[&|]'?)$/.test(what)) return ' (and is &&, or is ||)';
	if (/character: '[a-z]/i.test(what))
		return ' (a number with its unit goes under thresholds, by a name; and, or, not are &&, ||, !)';
	return '';
}

/** Compiles the yes or no of a field, or notes why not and gives null; also null when it is not there and not needed. */
export function compileYesNo(fields: Fields, key: string, names: Names, need = false): Expression | null {
	const placed = fields.placed(key, need);
	const compiled = placed && compileExpression(fields.source, placed, names);
	if (!compiled) return null;
	if (compiled.type.is === 'yes-no') return compiled.tree;
	fields.report(key, `${key}: a yes or no is needed here, this is ${wordsFor(compiled.type)}`);
	return null;
}
