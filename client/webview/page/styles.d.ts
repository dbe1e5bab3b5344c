/** Style sheets that a page imports for the bundler. */
declare module '*.css';
