// What a person does with a finger: elements are found by their label through the page's read-only list of items.
export const tests = {};
