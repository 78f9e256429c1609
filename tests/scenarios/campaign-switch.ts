/** The shipped plant with its campaigns switched on or off, bought for at the independent model's prices. */
import type { Model } from '$lib/engine/model';
import { apply } from '../reference/shipped';

/** The model's prices of materials are rounded to a tenth of a cent: with these the workbook buys at the same ones. */
export const SAME_PRICES = [
	['main_price', ['PB1'], (3.294 - 0.02 * 4) / 0.98],
	['main_price', ['PERT'], (1.948 - 0.015 * 3.8) / 0.985]
] as const;
/** As the button on the page of plans does. */
export function switchCampaigns(model: Model, off: boolean) {
	const { off: _off, ...on } = model.workbook.programmes!.find(({ name }) => name === 'campaigns')!;
	apply(model, { kind: 'put_programme', name: 'campaigns', programme: off ? { ...on, off } : on });
}
