import type { Source } from "../source.ts";

/** The bibliography of the plant room. */
export const plantSources = {
  "material-handbooks": {
    citation: "Handbook values for acrylic, glass and plastics: density and conductivity (also ISO 10456)",
    standing: "from memory",
  },
  "francis-1883": {
    citation:
      "Francis (1883), Lowell Hydraulic Experiments; in SI Q = 1.84 (L − 0.1 n H) H^1.5, as printed in hydraulics handbooks",
    standing: "published",
  },
  "usbr-water-measurement": {
    citation:
      "US Bureau of Reclamation, Water Measurement Manual, chapter 7 (weirs): head ≥ 0.06 m and ≤ L/3",
    standing: "from memory",
  },
  "kindsvater-carter-1957": {
    citation:
      "Kindsvater & Carter (1957), Discharge characteristics of rectangular thin-plate weirs, J. Hydraul. Div. ASCE 83(6); also ISO 1438: coefficient 0.587 for narrow notches",
    standing: "from memory",
  },
  "riser-stage-discharge": {
    citation:
      "Drainage practice for riser pipes: the lesser of a weir around the rim (1.84 π D H^1.5) and an orifice (0.6 A √(2gH))",
    standing: "published",
  },
  "wyly-eaton-1961": {
    citation:
      "Wyly & Eaton (1961), Capacities of stacks in sanitary drainage systems for buildings, NBS Monograph 31: Q = 27.8 r^(5/3) d^(8/3) gpm, d in inches; EN 12056-3 agrees within 0.2 %",
    standing: "from memory",
  },
  manning: {
    citation: "Manning's equation for open-channel flow; n 0.009–0.011 for smooth plastic",
    standing: "from memory",
  },
  "energy-equation": {
    citation: "The energy equation of a full pipe, with the kinetic energy left at the outlet as the 1",
    standing: "definition",
  },
  "first-principles": {
    citation: "First-principles physics: conservation of energy and mass, hydrostatics, lumped cooling",
    standing: "definition",
  },
  "illinois-77-906": {
    citation:
      "Illinois Administrative Code, title 77, part 906, appendix A, exhibit I: friction in schedule 40 plastic pipe, Hazen–Williams with C = 150",
    standing: "published",
  },
  "swamee-jain-1976": {
    citation:
      "Swamee & Jain (1976), Explicit equations for pipe-flow problems, J. Hydraul. Div. ASCE 102:657-664",
    standing: "from memory",
  },
  "crane-tp-410": {
    citation:
      "Crane Technical Paper 410, Flow of fluids: entries, exits, valves; roughness 0.0015 mm for smooth plastic",
    standing: "from memory",
  },
  "irc-2018-a22": {
    citation: "2018 International Residential Code, table A.2.2: K and L/D of screwed fittings",
    standing: "published",
  },
  "astm-d1785": {
    citation: "ASTM D1785, PVC plastic pipe, schedules 40, 80 and 120: inside diameters at minimum wall",
    standing: "published",
  },
  "sharqawy-2010": {
    citation:
      "Sharqawy, Lienhard & Zubair (2010), Thermophysical properties of seawater, Desalin. Water Treat. 16:354-380: kinematic viscosity at salinity 35",
    standing: "from memory",
    link: "https://doi.org/10.5004/dwt.2010.1079",
  },
  "pvc-velocity-guidance": {
    citation: "Engineering handbook guidance for PVC pressure pipe: at most 5 ft/s (1.5 m/s)",
    standing: "published",
  },
  "aspe-data-book-2": {
    citation:
      "ASPE Plumbing Engineering Design Handbook, volume 2: at least 2 ft/s (0.6 m/s) to keep solids moving",
    standing: "published",
  },
  "iso-6946": {
    citation: "ISO 6946, Building components: thermal resistance; inside surface 0.13 m²K/W (7.7 W/m²K)",
    standing: "published",
  },
  "shah-2014": {
    citation:
      "Shah (2014), Methods for calculation of evaporation from swimming pools and other water surfaces, ASHRAE Trans. 120",
    standing: "published",
  },
  "ashrae-hvac-applications": {
    citation:
      "ASHRAE Handbook, HVAC Applications (2011), natatoriums: 0.1 lb/(h ft² inHg) × activity factor, 4.0e-5 kg/(s m² kPa)",
    standing: "published",
  },
  "smith-lof-jones-1998": {
    citation:
      "Smith, Löf & Jones (1998), Rates of evaporation from swimming pools in active use, ASHRAE Trans. 104(1A): a still pool gives 74 % of (95 + 0.425 v)(pw − pa)/Y",
    standing: "published",
  },
  "buck-1981": {
    citation:
      "Buck (1981), New equations for computing vapor pressure and enhancement factor, J. Appl. Meteorol. 20:1527-1532, in its later form with 18.678",
    standing: "from memory",
  },
  "green-carritt-1967": {
    citation:
      "Green & Carritt (1967): vapour pressure over seawater, factor 1 − 0.000537 S, as coded in public oxygen libraries",
    standing: "published",
  },
  "iapws-if97": {
    citation:
      "IAPWS-IF97 through a reference library: latent heat 2.454, 2.442, 2.430 MJ/kg at 20, 25, 30 °C",
    standing: "reference library",
  },
  "gsw-heat-capacity": {
    citation:
      "TEOS-10 through its reference library: seawater of salinity 35 at 25 °C, 1023.3 kg/m³ and 3.999 kJ/(kg K)",
    standing: "reference library",
  },
  "ashrae-ton": {
    citation: "One ton of refrigeration is 12 000 Btu/h of heat removed (3.517 kW), ASHRAE",
    standing: "from memory",
  },
  "nfpa-70": {
    citation:
      "NFPA 70 (United States National Electrical Code), 210.20(A) and 210.23: 125 % of continuous load plus 100 % of the rest",
    standing: "published",
  },
  "cpsc-ground-fault": {
    citation:
      "US Consumer Product Safety Commission fact sheet on ground-fault protection: trips at 4–6 mA; test monthly",
    standing: "published",
  },
  "cpsc-generators": {
    citation: "US Consumer Product Safety Commission guidance on portable generators and carbon monoxide",
    standing: "from memory",
  },
  "osstf-tank-safety": {
    citation:
      "OSSTF health-and-safety bulletin on electrical hazards of tanks in schools: drip loops, outlets above and aside from water",
    standing: "published",
  },
  "irc-r301-5": {
    citation:
      "International Residential Code, table R301.5: uniformly distributed live load, 40 psf rooms other than sleeping rooms, 30 psf sleeping rooms",
    standing: "published",
  },
  "crusius-wanninkhof-2003": {
    citation:
      "Crusius & Wanninkhof (2003), Gas transfer velocities measured at low wind speed over a lake, Limnol. Oceanogr. 48:1010-1017",
    standing: "published",
  },
  "wanninkhof-2014": {
    citation:
      "Wanninkhof (2014), Relationship between wind speed and gas exchange over the ocean revisited, Limnol. Oceanogr. Methods 12:351-362: Schmidt number of oxygen in seawater",
    standing: "published",
    link: "https://doi.org/10.4319/lom.2014.12.351",
  },
  "oxygen-guidance": {
    citation:
      "Widely repeated water-quality guidance: 5 mg/L recommended, most species distressed between 4 and 2, deaths usual below 2; first source not traced",
    standing: "published",
  },
  "aeration-practice": {
    citation:
      "Aeration engineering: air is 23 % oxygen by mass; a bubble gives up roughly 2–6 % of its oxygen per metre of depth",
    standing: "from memory",
  },
  "astm-d4516": {
    citation: "ASTM D4516, Standardizing reverse osmosis performance data: about 3 % per °C",
    standing: "from memory",
  },
  "astm-d5615": {
    citation: "ASTM D5615, home reverse osmosis devices: rated at 345 kPa (50 psi) and 25 °C",
    standing: "published",
  },
  "epa-watersense-ro": {
    citation:
      "US EPA WaterSense, point-of-use reverse osmosis systems: typical units send 5 L or more to drain per litre made; labelled ones at most 2.3",
    standing: "published",
  },
  "vant-hoff": {
    citation: "Van 't Hoff's law for sodium chloride at 25 °C: about 8 kPa for each 100 mg/L dissolved",
    standing: "definition",
  },
  "levenspiel-1999": {
    citation:
      "Levenspiel (1999), Chemical Reaction Engineering, 3rd ed., chapters 11–14: mixed tanks and tanks in series",
    standing: "from memory",
  },
  "empty-bed-contact-time": {
    citation: "Empty-bed contact time: volume of the media bed over the flow (AWWA, US EPA)",
    standing: "from memory",
  },
  "lamp-practice": {
    citation: "Low-pressure mercury lamps give off roughly a third of their electric power as ultraviolet C",
    standing: "from memory",
  },
  "epa-uvdgm-2006": {
    citation: "US EPA (2006), Ultraviolet disinfection guidance manual, EPA 815-R-06-007, UV dose table",
    standing: "published",
  },
  "yoshimizu-1990": {
    citation: "Yoshimizu, Takizawa & Kimura (1990), UV susceptibility of some fish pathogens",
    standing: "published",
  },
  "bullock-stuckey-1977": {
    citation:
      "Bullock & Stuckey (1977), Ultraviolet treatment of water for destruction of five gram-negative bacteria pathogenic to fishes",
    standing: "published",
  },
  "lu-2022": {
    citation: "Lu et al. (2022), Aquaculture 548:737598: UV on theronts of Cryptocaryon irritans",
    standing: "published",
  },
  "olsen-2016": {
    citation: "Olsen et al. (2016): UV dose that inactivates the microalga Tetraselmis",
    standing: "published",
  },
} as const satisfies Record<string, Source>;
