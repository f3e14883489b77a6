import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import { type DefaultTreeAdapterTypes, parse } from 'parse5';

/** A node of a parsed document, Markdown or HTML. */
export interface Node {
	readonly type: string;
	readonly value?: string;
	readonly checked?: boolean | null;
	readonly children?: readonly Node[];
}

/** Markdown as a code host reads it. */
export const readMarkdown = (text: string): Node =>
	fromMarkdown(text, { extensions: [gfm()], mdastExtensions: [gfmFromMarkdown()] }) as Node;

export type HtmlNode = DefaultTreeAdapterTypes.Node;
export const readHtml = (text: string): HtmlNode => parse(text);

/** Every node of a kind, in the order of the document. */
export const nodes = (node: Node, type: string): Node[] => [
	...(node.type === type ? [node] : []),
	...(node.children ?? []).flatMap(child => nodes(child, type)),
];

/** The words of a node, without its marks. */
export const words = (node: Node): string => node.value ?? (node.children ?? []).map(words).join('');

/** The shape of a Markdown tree: kinds of nodes, text and code (which only ids stand in) left out. */
export const markdownShape = ({ type, children = [] }: Node): unknown => [
	type,
	...children.filter(child => child.type !== 'text' && child.type !== 'inlineCode').map(markdownShape),
];

/** The shape of an HTML tree: elements and the names of their attributes. */
export const htmlShape = (node: HtmlNode): unknown => [
	node.nodeName,
	...('attrs' in node ? node.attrs.map(({ name }) => name) : []),
	...('childNodes' in node ? node.childNodes.filter(child => child.nodeName !== '#text').map(htmlShape) : []),
];

/** Every element of an HTML tree. */
export const elements = (node: HtmlNode): Extract<HtmlNode, { attrs: unknown }>[] => [
	...('attrs' in node ? [node] : []),
	...('childNodes' in node ? node.childNodes.flatMap(elements) : []),
];
