// Stands for the packages that the PDF writer would load for drawing from HTML and SVG, which no report does.
export {};
