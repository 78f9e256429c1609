/**
 * What a screen says stands in the texts.ts beside it (ui/language.ts), so that a language can be added: no Svelte
 * file holds words of its own, neither in its markup nor in its code.
 */
import { parse } from 'svelte/compiler';
import { describe, expect, it } from 'vitest';

type Node = { readonly type?: string; readonly [key: string]: unknown };

/** Names, not words of a language. */
const NAMES = ['Metrewright'];
/** What the browser calls its keys, and the list of dragged things. */
const CODES =
	/^(Arrow\w+|Enter|Escape|Home|End|Page(Up|Down)|Tab|Delete|Backspace|Shift|Control|Meta|Files)$/;
/** Attributes that are read out or seen, whatever stands in them. */
const SPOKEN = ['title', 'aria-label', 'placeholder', 'alt', 'label', 'empty', 'caption'];
/** Attributes that hold names of classes, paths and addresses. */
const SILENT =
	/^(class|style|d|id|href|src|type|role|viewBox|transform|media|autocomplete|aria-keyshortcuts|data-.*)$/;

const words = (text: string) => /\p{L}{2}/u.test(text) && !NAMES.includes(text.trim());
/** Code is full of lower-case names; a capital or a second word makes a text of them. */
const looksLikeText = (text: string) =>
	words(text) &&
	!CODES.test(text) &&
	!/\.svelte$|^[(#.[]|^[a-z-]+: |minmax\(|^[a-z]+(, [a-z]+)+$/.test(text) &&
	(/^\s*[\p{Lu}“"][\p{L}’'-]*\p{Ll}/u.test(text) || /\p{L}[,;:.]?\s+\p{L}/u.test(text));

/** All texts that the markup and the code of a component hold themselves. */
function textsIn(source: string): string[] {
	const found: string[] = [];
	const nodesOf = (node: Node): Node[] =>
		Object.entries(node).flatMap(([key, value]) =>
			['css', 'loc', 'metadata', 'typeAnnotation', 'typeArguments', 'comments'].includes(key)
				? []
				: [value].flat().filter((one): one is Node => typeof one === 'object' && one !== null)
		);

	/** A literal is a text if it looks like one; `seen` says that it is shown, so that one word is enough. */
	function code(node: Node, seen: boolean): void {
		const { type } = node;
		if (/^(Import|TS(?!As|NonNull|Satisfies))/.test(type ?? '')) return;
		if (type === 'Fragment') return markup(node);
		const is = seen ? words : looksLikeText;
		if (type === 'Literal' && typeof node['value'] === 'string' && is(node['value']))
			found.push(node['value']);
		if (type === 'TemplateElement') {
			const text = (node['value'] as { cooked: string }).cooked;
			if (is(text)) found.push(text);
		}
		const passes = ['ConditionalExpression', 'LogicalExpression', 'TemplateLiteral'];
		const { test, ...shown } = node;
		if (test) code(test as Node, false);
		for (const one of nodesOf(shown)) code(one, seen && passes.includes(type ?? ''));
	}

	function attribute(node: Node): void {
		const name = String(node['name']);
		if (SILENT.test(name) && node['type'] === 'Attribute') return;
		for (const part of [node['value'] ?? node['expression']].flat() as Node[]) {
			const spoken = SPOKEN.includes(name);
			if (part?.type === 'Text') {
				const text = String(part['data']);
				if (spoken ? words(text) : looksLikeText(text)) found.push(text);
			} else if (part?.type === 'ExpressionTag') code(part['expression'] as Node, spoken);
			else if (part && typeof part === 'object') code(part, false);
		}
	}

	function markup(node: Node): void {
		if (node.type === 'Comment') return;
		if (node.type === 'Text' && words(String(node['data']).trim()))
			found.push(String(node['data']).trim());
		if (node.type === 'ExpressionTag') return code(node['expression'] as Node, true);
		for (const one of (node['attributes'] as Node[] | undefined) ?? []) attribute(one);
		for (const [key, value] of Object.entries(node)) {
			if (key === 'attributes') continue;
			for (const one of [value].flat() as Node[]) {
				if (!one || typeof one !== 'object') continue;
				if (['nodes', 'fragment'].includes(key) || one.type === 'Fragment') markup(one);
				else if (['expression', 'test', 'key', 'declaration'].includes(key)) code(one, false);
			}
		}
	}

	const root = parse(source, { modern: true });
	for (const script of [root.instance, root.module])
		if (script) code(script.content as unknown as Node, false);
	markup(root.fragment as unknown as Node);
	return found;
}

const components = import.meta.glob<string>('/src/**/*.svelte', {
	query: '?raw',
	import: 'default',
	eager: true
});

describe('a text of a component', () => {
	it.each([
		['between its tags', '<p>Cancel</p>'],
		['in an attribute that is read out', '<button aria-label="close"></button>'],
		['given to another component', '<Figure title="No ladder" />'],
		['in what is shown by turns', `<p>{same ? 'same' : cell.text}</p>`],
		['in a sentence around a value', '<p>{`${count} rows more`}</p>'],
		['in the code', `<script lang="ts">problem = 'Enter a number.';</script>`]
	])('is found %s', (_where, source) => {
		expect(textsIn(source)).toHaveLength(1);
	});

	it('is told from names, keys, classes and units', () => {
		const source = `<script lang="ts">
			import { texts } from './texts';
			let kind: 'First kind' | 'other' = $state('other');
			if (event.key === 'Escape') kind = 'other';
		</script>
		<svg class="link brick" viewBox="0 0 100 20"><path d="M 0 0 L 10 10" /></svg>
		<p class={['action', 'first']}>{texts.cancel} × {share} %</p>`;
		expect(textsIn(source)).toEqual([]);
	});
});

describe('every component', () => {
	it('leaves what it says to a texts module', () => {
		const own = Object.entries(components).flatMap(([path, source]) =>
			textsIn(source).map((text) => `${path}: ${text}`)
		);
		expect(own).toEqual([]);
	});
});

const modules = import.meta.glob<string>('/src/lib/ui/**/*texts.ts', {
	query: '?raw',
	import: 'default',
	eager: true
});

describe('every texts module', () => {
	it('gives its words by language, so that types ask for those of a language that is added', () => {
		const others = Object.entries(modules).flatMap(([path, source]) =>
			[...source.matchAll(/^export (?:const|function|default) .*/gm)]
				.map(([line]) => line)
				.filter((line) => !line.includes('= inLanguage('))
				.map((line) => `${path}: ${line}`)
		);
		expect(others).toEqual([]);
		expect(Object.keys(modules).length).toBeGreaterThan(40);
	});
});
