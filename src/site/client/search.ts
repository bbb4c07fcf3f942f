// The search page. Filled in below.
export {};
