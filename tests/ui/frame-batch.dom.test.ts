import { describe, expect, it } from 'vitest';
import { FrameBatch } from '$lib/browser/frame-batch';

describe('answers that come within one frame', () => {
	it('are handed on together, in the order in which they came', () => {
		const frames: (() => void)[] = [];
		const gathered = new FrameBatch((done) => frames.push(done));
		const said: string[] = [];
		gathered.add(() => said.push('base'));
		gathered.add(() => said.push('new line'));
		expect(frames).toHaveLength(1);
		expect(said).toEqual([]);
		frames[0]!();
		expect(said).toEqual(['base', 'new line']);
	});

	it('wait for a frame of their own when they come after it', () => {
		const frames: (() => void)[] = [];
		const gathered = new FrameBatch((done) => frames.push(done));
		const said: string[] = [];
		gathered.add(() => said.push('first'));
		frames[0]!();
		gathered.add(() => said.push('second'));
		expect(frames).toHaveLength(2);
		expect(said).toEqual(['first']);
	});

	it('do not wait for it when nothing more is to come, and come once', () => {
		const frames: (() => void)[] = [];
		const gathered = new FrameBatch((done) => frames.push(done));
		const said: string[] = [];
		gathered.add(() => said.push('all'));
		gathered.handOn();
		expect(said).toEqual(['all']);
		frames[0]!();
		expect(said).toEqual(['all']);
	});

	it('come soon where the page draws no frames', async () => {
		const hidden = Object.getOwnPropertyDescriptor(Document.prototype, 'hidden')!;
		Object.defineProperty(document, 'hidden', { configurable: true, get: () => true });
		const said = await new Promise((resolve) => new FrameBatch().add(() => resolve('there')));
		Object.defineProperty(document, 'hidden', hidden);
		expect(said).toBe('there');
	});
});
