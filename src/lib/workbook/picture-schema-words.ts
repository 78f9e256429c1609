/** What each field of a picture is: a part of `schema-words.ts`. Most name the quantity that is drawn. */
export const PICTURE_WORDS: Readonly<Record<string, string>> = {
	pictures: 'Pictures that the workbook offers; each names the quantities that it draws.',
	'pictures.title': 'What it is called on screen.',
	'pictures.subject': 'The set of products, one of which is shown.',

	...of('cross_section', {
		layer: 'The set of layers, the inner one first.',
		outside_diameter: 'The outside diameter, per subject.',
		thickness: 'The thickness, per subject and layer.',
		mass: 'The mass per metre, per subject and layer.',
		cost: 'The cost per metre, per subject and layer.',
		material: 'The material, per subject and layer.',
		wall: 'The set-point of the wall, per subject.',
		wall_minimum: 'The least wall that is permitted, per subject.',
		eccentricity: 'What eccentricity adds to it, per subject.',
		spread: 'What the spread of the process adds to it, per subject.',
		giveaway: 'What the wall above its minimum costs.',
		roles: 'The colour of each material, by member.'
	}),
	...of('build_up', {
		part: 'The set of parts of the cost.',
		quantity: 'What is stacked, per subject and part.',
		total: 'What the parts add up to.',
		per_unit: 'The same for a sales unit.',
		roles: 'The colour of each part, by member.'
	}),
	...of('items', {
		of: 'A choice of subject per member of another set: what lies under it, as coils under a pipe.',
		columns: 'Figures per that other set, in the order shown.'
	}),
	...of('ranking', {
		amount: 'Per one set: what its members are ranked by, the largest first.',
		by_part:
			'Per that set and one more, as a month: what they are ranked by in each of its members.',
		columns: 'Further figures per the ranked set, in the order shown.'
	}),
	...of('months', {
		period: 'The set of months, marked as such.',
		results: 'Numbers per month, one of which is drawn at a time.',
		added: 'Those of them whose months add up to that of a year.',
		closed: 'Per month, yes or no: which are closed.'
	}),
	...of('payback', {
		year: 'The set of years.',
		cumulative: 'The running total of cash, per year.',
		cumulative_discounted: 'The running total of discounted cash, per year.',
		payback: 'When the money is back.',
		discounted_payback: 'When it is back with interest.',
		outlay: 'What is spent.',
		npv: 'The net present value.',
		irr: 'The rate of return.',
		annual_value: 'What it is worth a year.',
		life: 'How long it lasts.',
		options: 'Per option, yes or no: which of them a scenario holds.',
		parts: 'Per part of the cash flow: what the net present value is made of.',
		more: 'Further figures of each case, in this order.'
	}),
	...of('capacity', {
		note: 'What every load is of, in words.',
		month: 'The set of months.',
		loads: 'Kinds of resource, each with its loads in per cent of the hours on offer.'
	}),
	'loads.load': 'The load, per month and one other set: stages, lines.',
	'loads.load_of_year': 'The load of the year, per that other set.',
	'loads.hours_short': 'The hours that are missing, per that other set, and per month or not.',
	...of('ways_out', {
		hours_freed: 'The hours that a scenario frees, against its reference.',
		earned: 'What is earned more with them.',
		earned_later: 'The same at the demand of a later year.',
		price_of_hour: 'What such an hour costs.'
	}),
	...of('patterns', {
		pattern: 'The set of shift patterns.',
		against: 'The pattern that the others are compared with at first.',
		hour: 'The set of the hours of the week.',
		worked: 'Yes or no, per pattern and hour: drawn small above each pattern.',
		metres: 'Good metres, per pattern.',
		cost: 'The cost of one, per pattern.',
		rows: 'Figures per pattern, in the order shown.',
		by_scenario: 'Figures of the whole plant, compared between scenarios.'
	}),
	...of('week', {
		pattern: 'The set of shift patterns.',
		weekday: 'The set of seven weekdays.',
		hour: 'The set of the 168 hours, from the first weekday on.',
		shown_first: 'A choice of pattern: the one shown first.',
		worked: 'Yes or no, per pattern and hour, an input: what is painted.',
		premium: 'The premium in per cent, per hour.',
		price: 'What a unit of energy costs, per hour.',
		costs: 'What an hour that is worked costs, part by part, per hour.',
		night: 'Yes or no, per hour: which are drawn darker.',
		crew: 'A choice of crew, per hour; hours of all but the first are dotted.',
		facts: 'Figures below the week, per pattern.',
		cautions: 'Yes/no quantities that caution, per pattern.'
	}),
	...of('calendar', {
		of_year: 'The year, an input.',
		month: 'The set of twelve months.',
		day: 'The set of days of the month.',
		weekday: 'The set of weekdays, the weekend last.',
		date: 'The date, per month and day.',
		weekday_of: 'The weekday, per month and day.',
		week: 'The week, per month and day.',
		is_holiday: 'Whether it is a holiday, per month and day.',
		is_shut_down: 'Whether the plant is shut, per month and day.',
		working_days: 'How many working days, per month and weekday.',
		holiday: 'The set of holidays.',
		rule: 'A choice of two, per holiday: on a date, or counted from Easter.',
		holiday_month: 'Its month.',
		holiday_day: 'Its day of the month.',
		days_after: 'How many days after Easter.',
		holiday_date: 'The date that its rule gives.',
		shut_down: 'The set of shut-downs.',
		from_month: 'The month in which it begins.',
		from_day: 'The day on which it begins.',
		to_month: 'The month in which it ends.',
		to_day: 'The day on which it ends.',
		first_date: 'Its first date.',
		last_date: 'Its last date.'
	}),
	...of('bridge', {
		total: 'What is explained.',
		added: 'The parts that add up to it.',
		taken_off: 'The parts that are taken off.'
	}),
	...of('quote', {
		scenario: 'The scenario that quotes stand on; the base where it is left out.',
		order: 'Inputs of the order that the page offers to change.',
		terms: 'Inputs of the terms that hold for it.',
		size: 'The size of the order.',
		taken_by: 'What takes it.',
		hours: 'How long that runs.',
		price: 'What is left of the price.',
		floor: 'The least price at which it should be taken.',
		target: 'The price with the margin that is wanted.',
		list: 'The price of the list.',
		invoice: 'The price on the invoice.',
		margin: 'The margin at that price.',
		target_margin: 'The margin that is wanted.',
		by_size: 'Prices per size of an order.',
		by_length: 'Prices per length of a coil.',
		waterfall: 'The steps from the price of the list to what is left of it.',
		hour_value: 'What hours are worth, per month.',
		extras: 'What may be had besides, per extra.',
		make_or_buy: 'Whether making or buying costs less.',
		on_invoice: 'Prices as the customer reads them, by metre, coil or pallet.',
		validity: 'How long the quote holds.',
		clause: 'How the price follows indices.',
		offer: 'What an offer says to the customer: what is not named here is on none.'
	}),
	'offer.customer': 'The choice of the customer.',
	'offer.goods': 'Choices that say what is offered: the first that holds one.',
	'offer.counts': 'How much of it, in coils and pallets.',
	'offer.prices': 'Its prices.',
	'offer.total': 'What it comes to.',
	'offer.terms': 'Terms of the customer, or of the order.',
	'offer.cautions': 'What is said where a yes/no figure says yes.',
	'offer.note': 'The index clause in words; its shares stand below it.',
	'counts.title': 'The words for it on the offer.',
	'counts.quantity': 'The figure.',
	'prices.title': 'The words for it on the offer.',
	'prices.quantity': 'The figure.',
	'total.title': 'The words for it on the offer.',
	'total.quantity': 'The figure.',
	'terms.title': 'The words for it on the offer.',
	'terms.quantity': 'The figure.',
	'cautions.when': 'The yes/no figure.',
	'cautions.note': 'What is said.',
	'by_size.floor': 'The least price, per size.',
	'by_size.target': 'The price that is wanted, per size.',
	'by_size.offered': 'The price that is offered, per size.',
	'by_length.floor': 'The least price, per length.',
	'by_length.target': 'The price that is wanted, per length.',
	'waterfall.amount': 'What a step adds or takes off.',
	'waterfall.level': 'The price after it.',
	'waterfall.is_total': 'Whether it is a total.',
	'hour_value.value': 'The value of an hour, per month.',
	'hour_value.cost': "What the order's hours cost, per month.",
	'hour_value.chosen': 'The choice of the month.',
	'hour_value.free': 'Hours that are free on what takes the order, per month.',
	'extras.wanted': 'Whether it is wanted, per extra.',
	'extras.price': 'Its price, per extra.',
	'make_or_buy.make': 'What making costs, its hours included.',
	'make_or_buy.buy': 'What buying would cost.',
	'make_or_buy.buy_is_less': 'Whether buying costs less.',
	'clause.share': 'The share of the price that follows an index, per part of the clause.',
	'clause.index': 'How far the index has moved, per part.',
	'clause.least': 'The least move that counts.',
	'clause.most': 'The greatest move that counts.',
	'clause.price': 'The price that follows.'
};

/** The fields of one kind of picture. */
function of(kind: string, words: Readonly<Record<string, string>>): Record<string, string> {
	return Object.fromEntries(
		Object.entries(words).map(([field, said]) => [`pictures(${kind}).${field}`, said])
	);
}
