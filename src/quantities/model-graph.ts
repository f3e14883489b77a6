import type { Outcome } from '../expressions/tree.ts';
import type { Bounded } from '../graph/bounded.ts';
import { Constant } from '../graph/constant.ts';
import { Formula } from '../graph/formula.ts';
import { type Graph, makeGraph, type Node } from '../graph/graph.ts';
import { LimitNode } from '../graph/limit.ts';
import type { Reads } from '../graph/reader.ts';
import { WhatIf } from '../graph/what-if.ts';
import type { Question } from '../sheet/question.ts';
import { answerNode } from './answer-node.ts';
import type { AnyQuantity } from './quantity.ts';

/** The whole model: a node for every answer and quantity. */
export function modelGraph(questions: readonly Question[], quantities: readonly AnyQuantity[]): Graph {
	return makeGraph([...questions.map(answerNode), ...quantities.map(quantityNode)]);
}

function quantityNode(quantity: AnyQuantity): Node {
	const { id } = quantity;
	if ('limit' in quantity) {
		const { limit, inputs, when, expensive = false } = quantity;
		return new LimitNode(id, limit, inputs, when && (reads => when(reads)), expensive);
	}
	if ('whatIf' in quantity) return new WhatIf(id, quantity.whatIf.of, quantity.whatIf.with);
	if ('value' in quantity) return new Constant(id, quantity.value, quantity.standsFor ?? id);
	const { inputs, expensive = false, assumes = false, compute } = quantity;
	const formula = compute as (reads: Reads) => Outcome | Bounded;
	return new Formula({ id, dependencies: inputs, expensive, assumes: assumes ? [id] : [], formula });
}
