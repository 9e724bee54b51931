import type { Source } from "../source.ts";

const remembered = "from memory";

/** Works the breeding room rests on. */
export const breedingSources = {
  "press-2007": {
    citation: "Press, Teukolsky, Vetterling & Flannery (2007), Numerical Recipes, 3rd edition, chapter 6",
    standing: remembered,
  },
  "garwood-1936": {
    citation: "Garwood (1936), Fiducial limits for the Poisson distribution, Biometrika 28, 437–442",
    standing: remembered,
  },
  "fisher-1925": {
    citation: "Fisher (1925), Statistical Methods for Research Workers: the index of dispersion",
    standing: remembered,
  },
  "wilson-1927": {
    citation:
      "Wilson (1927), Probable inference, JASA 22, 209–212; examples in Newcombe (1998), Stat. Med. 17, 857–872",
    standing: remembered,
  },
  "clopper-pearson-1934": {
    citation: "Clopper & Pearson (1934), The use of confidence or fiducial limits, Biometrika 26, 404–413",
    standing: remembered,
  },
  "przyborowski-wilenski-1940": {
    citation:
      "Przyborowski & Wilenski (1940), Homogeneity of results in testing samples from Poisson series, Biometrika 31, 313–323",
    standing: remembered,
  },
  "kaplan-meier-1958": {
    citation:
      "Kaplan & Meier (1958), Nonparametric estimation from incomplete observations, JASA 53, 457–481",
    standing: remembered,
  },
  "greenwood-1926": {
    citation:
      "Greenwood (1926), The natural duration of cancer, Reports on Public Health and Medical Subjects 33",
    standing: remembered,
  },
  "lavens-sorgeloos-1996": {
    citation:
      "Lavens & Sorgeloos, eds (1996), Manual on the production and use of live food, FAO Fisheries Technical Paper 361",
    standing: remembered,
  },
  "van-stappen-1996": {
    citation:
      "Van Stappen (1996), in FAO Fisheries Technical Paper 361, chapter 4; definitions as given by Asem (2013)",
    standing: "published",
  },
  "campbell-1974": {
    citation:
      "Campbell, Frazer, Gilbert, Gutierrez & Mackauer (1974), Temperature requirements of some aphids, J. Appl. Ecol. 11, 431–438: 1/days as a line over temperature",
    standing: remembered,
  },
  "henderson-1976": {
    citation:
      "Henderson (1976), A simple method for computing the inverse of a numerator relationship matrix, Biometrics 32, 69–83: the tabular rule",
    standing: remembered,
  },
  "falconer-mackay-1996": {
    citation:
      "Falconer & Mackay (1996), Introduction to Quantitative Genetics, 4th edition, chapters 4 and 5",
    standing: remembered,
  },
  "ballou-lacy-1995": {
    citation:
      "Ballou & Lacy (1995), Identifying genetically important individuals for management of genetic variation in pedigreed populations",
    standing: remembered,
  },
  "wright-1931": {
    citation: "Wright (1931), Evolution in Mendelian populations, Genetics 16, 97–159",
    standing: remembered,
  },
  "holsinger-notes": {
    citation: "Holsinger, Lecture Notes in Population Genetics: variance effective size (2N−1)/(1+Vk/2)",
    standing: "published",
  },
  "lacy-1989": {
    citation: "Lacy (1989), Analysis of founder representation in pedigrees, Zoo Biology 8, 111–123",
    standing: "published",
  },
  "jain-1984": {
    citation: "Jain, Chiu & Hawe (1984), A quantitative measure of fairness and discrimination, DEC-TR-301",
    standing: remembered,
  },
} as const satisfies Record<string, Source>;
