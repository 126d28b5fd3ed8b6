package checks

// bookLoad is the shelf load of schools and libraries, 50 pounds per square foot, in
// N/mm2: Architectural Woodwork Standards 2009, 1.2.21.2.
const bookLoad = 50 * squareFootLoad
