// Replaces packages that the PDF writer would load to draw HTML and SVG, which no report does.
export {};
