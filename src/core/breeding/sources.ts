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
  "ocellaris-2007": {
    citation:
      "J. Mar. Biol. Assoc. UK 87 (2007), 1025–1033: Amphiprion ocellaris, hatching 152 h after fertilisation at 27–28 °C (abstract)",
    standing: "published",
  },
  "perideraion-2008": {
    citation:
      "Amphiprion perideraion in captivity (2008), Airiti 03794180-200803, 75–85: 7.2 ± 1.2 d at 27 ± 1 °C (abstract)",
    standing: "published",
  },
  "sarvi-clarkii": {
    citation: "Sarvi & Pourmozaffar, review of Amphiprion clarkii: 6 d at 28 °C (abstract)",
    standing: "published",
  },
  "frenatus-2021": {
    citation:
      "Amphiprion frenatus (2021), doi 10.3969/j.issn.2095-1191.2021.12.013: 8–10 d at 27 ± 1 °C (abstract)",
    standing: "published",
  },
  "elacatinus-rearing": {
    citation:
      "Rearing of Elacatinus lori and E. colini: 8.18 ± 0.4 d and 6.8 ± 0.4 d after first sighting (abstract)",
    standing: "published",
  },
  "amblygobius-2023": {
    citation: "Amblygobius phalaena (2023), Fishes 8, 364: 81 h 26 min at 27.0 °C (abstract)",
    standing: "published",
  },
  "privitera-2001": {
    citation: "Privitera (2001), J. Fish Biol. 58, 1211: a reef goby, 4–5 nights (abstract)",
    standing: "published",
  },
  "vagelli-1999": {
    citation:
      "Vagelli (1999), Environ. Biol. Fishes 56, 79: about 19 d as eggs, then about 10 d hatched in the mouth (abstract)",
    standing: "published",
  },
  "lin-2008": {
    citation:
      "Lin et al. (2008), Aquaculture 277, 287: gestation 17.33 ± 2.94 d; treaty listing of all seahorses (abstract)",
    standing: "published",
  },
  "nur-christianus-2013": {
    citation:
      "Nur & Christianus (2013), Asian J. Anim. Vet. Adv. 8, 108: dwarf shrimp, 15 d at 27 °C (abstract)",
    standing: "published",
  },
  "annual-fishes-2013": {
    citation:
      "African annual fishes (2013), EvoDevo 4, 24: hatching possible from 15 d; many rest (abstract)",
    standing: "published",
  },
  "wourms-1972": {
    citation: "Wourms (1972), on the rest of annual fish eggs, which may add 105 ± 20 d (abstract)",
    standing: "published",
  },
  "fundulus-air": {
    citation: "Fundulus grandis eggs kept in air: 8–11 d at 26 °C (abstract)",
    standing: "published",
  },
  "thilakarathne-2021": {
    citation:
      "Thilakarathne et al. (2021), Sri Lanka J. Aquat. Sci. 26, 25: angelfish, about 72 h (abstract)",
    standing: "published",
  },
  "celik-2014": {
    citation:
      "Çelik et al. (2014), Turkish J. Fish. Aquat. Sci. 14, 863: angelfish, day 3 at 24 ± 1 °C, swimming 6–7 d after hatching (abstract)",
    standing: "published",
  },
  "mouthbrooder-memory": {
    citation: "Mouthbrooding cichlids, about 21 d to release: as told among keepers",
    standing: remembered,
  },
  "rotifer-targets": {
    citation:
      "Treece & Davis (2000), SRAC Publication 701: 3–5 rotifers/mL, topped up below 3/mL; 10/mL at 25–50 larvae/L (seen in an unattributed copy)",
    standing: "published",
  },
  "hatching-conditions-2000": {
    citation:
      "New & Valenti, eds (2000), Freshwater Prawn Culture, chapter 6: 25–28 °C, at most 5 g/L under 20 L and 2 g/L above; enrichment from 8 h after hatching",
    standing: "published",
  },
} as const satisfies Record<string, Source>;
