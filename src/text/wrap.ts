/** Wraps text at spaces to a width; a word longer than that keeps its own line. Following lines are indented. */
export function wrap(text: string, width: number, indent = ''): string[] {
	return text.split('\n').flatMap(paragraph => {
		const lines: string[] = [];
		let line = '';
		for (const word of paragraph.split(/\s+/).filter(part => part !== '')) {
			const next = line === '' ? word : `${line} ${word}`;
			if (line !== '' && next.length > width) {
				lines.push(line);
				line = indent + word;
			} else line = next;
		}
		return [...lines, line];
	});
}
