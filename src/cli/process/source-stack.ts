import { SourceMap } from 'node:module';

/** A stack of the bundled program by the files it was made of, `src/audit/next.ts:41:7`; places that the map lacks stay. */
export function sourceStack(stack: string, map: string): string {
	const source = new SourceMap(JSON.parse(map));
	return stack.replace(/[^\s(]*program\.js:(\d+):(\d+)/g, (place, line, column) => {
		const found = source.findEntry(line - 1, column - 1);
		if (!('originalSource' in found)) return place;
		return `${found.originalSource.replace(/^(\.\.\/)+/, '')}:${found.originalLine + 1}:${found.originalColumn + 1}`;
	});
}
