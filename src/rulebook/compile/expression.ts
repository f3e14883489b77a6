import { type ASTNode, Environment } from '@marcbachmann/cel-js';
import type { Comparison, Expression } from '../../expressions/tree.ts';
import { type Placed, quote } from './fields.ts';
import { type Names, type Type, wordsFor } from './names.ts';
import type { Source } from './source.ts';
import { differenceOf, productOf, same, sumOf } from './types.ts';

/** A compiled expression with what it gives. */
export interface Compiled {
	readonly tree: Expression;
	readonly type: Type;
}

/** Longer expressions are refused before they are parsed. */
const longest = 1000;
const grammar = new Environment({ limits: { maxDepth: 60, maxAstNodes: 400 } });

/**
 * Compiles a CEL text to a checked tree, or notes why not (with its place) and gives null.
 * One walk over the parsed tree refuses everything but comparison, + - *, division by a written decimal,
 * && || ! ?:, `in` and size, and checks names, kinds and choices on the way.
 */
export function compileExpression(source: Source, { text, offset }: Placed, names: Names): Compiled | null {
	const refuse = (message: string, at = 0): null => {
		source.report(offset + at, message);
		return null;
	};
	if (text.length > longest)
		return refuse(`an expression has at most ${longest} characters; this one has ${text.length}`);
	let ast: ASTNode;
	try {
		ast = grammar.parse(text).ast;
	} catch (error) {
		const at = (error as { node?: { pos?: number } }).node?.pos ?? 0;
		const message = String((error as Error).message).split('\n')[0];
		return refuse(`not an expression: ${message}`, at);
	}
	try {
		return new Walk(names).walk(ast);
	} catch (error) {
		if (!(error instanceof Refused)) throw error;
		return refuse(error.message, error.at);
	}
}

class Refused extends Error {
	readonly at: number;
	constructor(message: string, at: number) {
		super(message);
		this.at = at;
	}
}

const bare: Type = { is: 'number', kind: 'ratio' };
const yesNo: Type = { is: 'yes-no' };

interface AnyNode {
	readonly op: string;
	readonly args: unknown;
	readonly start: number;
}

class Walk {
	private readonly names: Names;
	constructor(names: Names) {
		this.names = names;
	}

	walk(node: AnyNode): Compiled {
		const args = node.args as AnyNode[];
		switch (node.op) {
			case 'value':
				return this.literal(node);
			case 'id':
				return this.name(String(node.args), node);
			case '.':
				return this.member(node);
			case 'list':
				return this.list(args, node);
			case '!_': {
				const inner = this.ofType(node.args as AnyNode, 'yes-no');
				return { tree: ['!', inner.tree], type: yesNo };
			}
			case '-_': {
				const inner = this.ofType(node.args as AnyNode, 'number');
				return { tree: ['-', inner.tree], type: inner.type };
			}
			case '&&':
			case '||': {
				const [a, b] = [this.ofType(args[0]!, 'yes-no'), this.ofType(args[1]!, 'yes-no')];
				return { tree: [node.op, a.tree, b.tree], type: yesNo };
			}
			case '?:':
				return this.conditional(args, node);
			case '==':
			case '!=':
			case '<':
			case '<=':
			case '>':
			case '>=':
				return this.comparison(node.op, args, node);
			case '+':
			case '-':
			case '*':
			case '/':
				return this.arithmetic(node.op, args, node);
			case 'in':
				return this.membership(args, node);
			case 'call':
				return this.call(node);
			default:
				throw new Refused(
					`${quote(node.op)} is not used in rules: only comparison, + - * /, && || ! ?:, in, size`,
					node.start,
				);
		}
	}

	private literal(node: AnyNode): Compiled {
		const value = node.args;
		if (typeof value === 'string')
			return { tree: ['value', value], type: { is: 'text', choices: [value], written: true } };
		if (typeof value === 'boolean') return { tree: ['value', value], type: yesNo };
		if (typeof value === 'bigint') return { tree: ['value', Number(value)], type: bare };
		if (typeof value === 'number' && Number.isFinite(value)) return { tree: ['value', value], type: bare };
		throw new Refused('only texts, finite numbers, true and false are written in rules', node.start);
	}

	private name(name: string, node: AnyNode): Compiled {
		const type = this.names.get(name);
		if (!type) throw new Refused(`${quote(name)} is no answer, no quantity and no threshold of this rule`, node.start);
		return { tree: ['name', name], type };
	}

	private member(node: AnyNode): Compiled {
		const [of, member] = node.args as [AnyNode, string];
		if (of.op !== 'id') throw new Refused('a name has two parts: section.answer', node.start);
		return this.name(`${String(of.args)}.${member}`, node);
	}

	private list(args: AnyNode[], node: AnyNode): Compiled {
		const texts = args.map(arg => {
			if (arg.op !== 'value' || typeof arg.args !== 'string') throw new Refused('a list holds texts only', arg.start);
			return arg.args;
		});
		if (texts.length === 0) throw new Refused('an empty list', node.start);
		return { tree: ['list', texts], type: { is: 'list', choices: texts, written: true } };
	}

	private ofType<Is extends Type['is']>(node: AnyNode, is: Is): Compiled & { type: Extract<Type, { is: Is }> } {
		const found = this.walk(node);
		if (found.type.is === is) return found as Compiled & { type: Extract<Type, { is: Is }> };
		const want = { number: 'a number', 'yes-no': 'a yes or no', text: 'a choice', list: 'a list' }[is];
		throw new Refused(`${want} is needed here, this is ${wordsFor(found.type)}`, node.start);
	}

	private conditional(args: AnyNode[], node: AnyNode): Compiled {
		const test = this.ofType(args[0]!, 'yes-no');
		const [a, b] = [this.walk(args[1]!), this.walk(args[2]!)];
		const type = same(a.type, b.type);
		if (!type)
			throw new Refused(`both sides of ?: must be alike: ${wordsFor(a.type)} and ${wordsFor(b.type)}`, node.start);
		return { tree: ['?:', test.tree, a.tree, b.tree], type };
	}

	private comparison(op: Comparison, args: AnyNode[], node: AnyNode): Compiled {
		const [a, b] = [this.walk(args[0]!), this.walk(args[1]!)];
		const ordered = op !== '==' && op !== '!=';
		if (ordered && (a.type.is !== 'number' || b.type.is !== 'number')) {
			throw new Refused(
				`${op} compares numbers, not ${wordsFor(a.type.is === 'number' ? b.type : a.type)}`,
				node.start,
			);
		}
		if (a.type.is === 'text' && b.type.is === 'text') this.agree(a.type, b.type, node.start);
		else if (a.type.is === 'list' || !same(a.type, b.type)) {
			throw new Refused(`${wordsFor(a.type)} cannot be compared with ${wordsFor(b.type)}`, node.start);
		}
		return { tree: [op, a.tree, b.tree], type: yesNo };
	}

	private arithmetic(op: '+' | '-' | '*' | '/', args: AnyNode[], node: AnyNode): Compiled {
		const [a, b] = [this.ofType(args[0]!, 'number'), this.ofType(args[1]!, 'number')];
		if (op === '/') {
			const by = args[1]!;
			if (by.op !== 'value' || typeof by.args !== 'number' || by.args === 0) {
				throw new Refused('division is by a written decimal other than 0, as in x / 2.0', by.start);
			}
		}
		const kind = { '+': sumOf, '-': differenceOf, '*': productOf, '/': productOf }[op](a.type.kind, b.type.kind);
		if (!kind) throw new Refused(`${wordsFor(a.type)} ${op} ${wordsFor(b.type)} has no meaning here`, node.start);
		return { tree: [op, a.tree, b.tree], type: { is: 'number', kind } };
	}

	private membership(args: AnyNode[], node: AnyNode): Compiled {
		const [a, b] = [this.ofType(args[0]!, 'text'), this.ofType(args[1]!, 'list')];
		this.agree(a.type, b.type, node.start);
		return { tree: ['in', a.tree, b.tree], type: yesNo };
	}

	private call(node: AnyNode): Compiled {
		const [name, args] = node.args as [string, AnyNode[]];
		if (name !== 'size' || args.length !== 1)
			throw new Refused(`${quote(name)} is not called in rules; only size(list) is`, node.start);
		const list = this.ofType(args[0]!, 'list');
		return { tree: ['size', list.tree], type: bare };
	}

	/** A text written in a rule must be one of the other side's choices; two questions' choices must share one. */
	private agree(a: Choices, b: Choices, at: number): void {
		if (!a.choices || !b.choices || (a.written && b.written)) return;
		const [written, offered] = a.written ? [a.choices, b.choices] : [b.choices, a.choices];
		const strange = written.filter(text => !offered.includes(text));
		if (a.written || b.written ? strange.length === 0 : strange.length < written.length) return;
		throw new Refused(`${quote(strange[0]!)} is not one of the choices ${offered.join(', ')}`, at);
	}
}

type Choices = Extract<Type, { is: 'text' | 'list' }>;
