// The town that each time zone is named after, with its position to a tenth of a degree.
// Source: zone.tab of the IANA time zone database (2025b), which is in the public domain.
const table = `
Europe/Andorra 42.5 1.5;Asia/Dubai 25.3 55.3;Asia/Kabul 34.5 69.2;America/Antigua 17.1 -61.8
America/Anguilla 18.2 -63.1;Europe/Tirane 41.3 19.8;Asia/Yerevan 40.2 44.5;Africa/Luanda -8.8 13.2
Antarctica/McMurdo -77.8 166.6;Antarctica/Casey -66.3 110.5;Antarctica/Davis -68.6 78
Antarctica/DumontDUrville -66.7 140;Antarctica/Mawson -67.6 62.9;Antarctica/Palmer -64.8 -64.1
Antarctica/Rothera -67.6 -68.1;Antarctica/Syowa -69 39.6;Antarctica/Troll -72 2.5;Antarctica/Vostok -78.4 106.9
America/Argentina/Buenos_Aires -34.6 -58.5;America/Argentina/Cordoba -31.4 -64.2;America/Argentina/Salta -24.8 -65.4
America/Argentina/Jujuy -24.2 -65.3;America/Argentina/Tucuman -26.8 -65.2;America/Argentina/Catamarca -28.5 -65.8
America/Argentina/La_Rioja -29.4 -66.8;America/Argentina/San_Juan -31.5 -68.5;America/Argentina/Mendoza -32.9 -68.8
America/Argentina/San_Luis -33.3 -66.3;America/Argentina/Rio_Gallegos -51.6 -69.2
America/Argentina/Ushuaia -54.8 -68.3;Pacific/Pago_Pago -14.3 -170.7;Europe/Vienna 48.2 16.3
Australia/Lord_Howe -31.6 159.1;Antarctica/Macquarie -54.5 158.9;Australia/Hobart -42.9 147.3
Australia/Melbourne -37.8 145;Australia/Sydney -33.9 151.2;Australia/Broken_Hill -31.9 141.4
Australia/Brisbane -27.5 153;Australia/Lindeman -20.3 149;Australia/Adelaide -34.9 138.6;Australia/Darwin -12.5 130.8
Australia/Perth -31.9 115.8;Australia/Eucla -31.7 128.9;America/Aruba 12.5 -70;Europe/Mariehamn 60.1 19.9
Asia/Baku 40.4 49.9;Europe/Sarajevo 43.9 18.4;America/Barbados 13.1 -59.6;Asia/Dhaka 23.7 90.4
Europe/Brussels 50.8 4.3;Africa/Ouagadougou 12.4 -1.5;Europe/Sofia 42.7 23.3;Asia/Bahrain 26.4 50.6
Africa/Bujumbura -3.4 29.4;Africa/Porto-Novo 6.5 2.6;America/St_Barthelemy 17.9 -62.9;Atlantic/Bermuda 32.3 -64.8
Asia/Brunei 4.9 114.9;America/La_Paz -16.5 -68.2;America/Kralendijk 12.2 -68.3;America/Noronha -3.9 -32.4
America/Belem -1.4 -48.5;America/Fortaleza -3.7 -38.5;America/Recife -8.1 -34.9;America/Araguaina -7.2 -48.2
America/Maceio -9.7 -35.7;America/Bahia -13 -38.5;America/Sao_Paulo -23.5 -46.6;America/Campo_Grande -20.4 -54.6
America/Cuiaba -15.6 -56.1;America/Santarem -2.4 -54.9;America/Porto_Velho -8.8 -63.9;America/Boa_Vista 2.8 -60.7
America/Manaus -3.1 -60;America/Eirunepe -6.7 -69.9;America/Rio_Branco -10 -67.8;America/Nassau 25.1 -77.3
Asia/Thimphu 27.5 89.7;Africa/Gaborone -24.6 25.9;Europe/Minsk 53.9 27.6;America/Belize 17.5 -88.2
America/St_Johns 47.6 -52.7;America/Halifax 44.6 -63.6;America/Glace_Bay 46.2 -60;America/Moncton 46.1 -64.8
America/Goose_Bay 53.3 -60.4;America/Blanc-Sablon 51.4 -57.1;America/Toronto 43.6 -79.4;America/Iqaluit 63.7 -68.5
America/Atikokan 48.8 -91.6;America/Winnipeg 49.9 -97.2;America/Resolute 74.7 -94.8;America/Rankin_Inlet 62.8 -92.1
America/Regina 50.4 -104.7;America/Swift_Current 50.3 -107.8;America/Edmonton 53.5 -113.5
America/Cambridge_Bay 69.1 -105;America/Inuvik 68.3 -133.7;America/Creston 49.1 -116.5
America/Dawson_Creek 55.8 -120.2;America/Fort_Nelson 58.8 -122.7;America/Whitehorse 60.7 -135.1
America/Dawson 64.1 -139.4;America/Vancouver 49.3 -123.1;Indian/Cocos -12.2 96.9;Africa/Kinshasa -4.3 15.3
Africa/Lubumbashi -11.7 27.5;Africa/Bangui 4.4 18.6;Africa/Brazzaville -4.3 15.3;Europe/Zurich 47.4 8.5
Africa/Abidjan 5.3 -4;Pacific/Rarotonga -21.2 -159.8;America/Santiago -33.5 -70.7;America/Coyhaique -45.6 -72.1
America/Punta_Arenas -53.1 -70.9;Pacific/Easter -27.1 -109.4;Africa/Douala 4 9.7;Asia/Shanghai 31.2 121.5
Asia/Urumqi 43.8 87.6;America/Bogota 4.6 -74.1;America/Costa_Rica 9.9 -84.1;America/Havana 23.1 -82.4
Atlantic/Cape_Verde 14.9 -23.5;America/Curacao 12.2 -69;Indian/Christmas -10.4 105.7;Asia/Nicosia 35.2 33.4
Asia/Famagusta 35.1 34;Europe/Prague 50.1 14.4;Europe/Berlin 52.5 13.4;Europe/Busingen 47.7 8.7
Africa/Djibouti 11.6 43.1;Europe/Copenhagen 55.7 12.6;America/Dominica 15.3 -61.4;America/Santo_Domingo 18.5 -69.9
Africa/Algiers 36.8 3;America/Guayaquil -2.2 -79.8;Pacific/Galapagos -0.9 -89.6;Europe/Tallinn 59.4 24.8
Africa/Cairo 30.1 31.2;Africa/El_Aaiun 27.1 -13.2;Africa/Asmara 15.3 38.9;Europe/Madrid 40.4 -3.7
Africa/Ceuta 35.9 -5.3;Atlantic/Canary 28.1 -15.4;Africa/Addis_Ababa 9 38.7;Europe/Helsinki 60.2 25
Pacific/Fiji -18.1 178.4;Atlantic/Stanley -51.7 -57.9;Pacific/Chuuk 7.4 151.8;Pacific/Pohnpei 7 158.2
Pacific/Kosrae 5.3 163;Atlantic/Faroe 62 -6.8;Europe/Paris 48.9 2.3;Africa/Libreville 0.4 9.4;Europe/London 51.5 -0.1
America/Grenada 12.1 -61.8;Asia/Tbilisi 41.7 44.8;America/Cayenne 4.9 -52.3;Europe/Guernsey 49.5 -2.5
Africa/Accra 5.5 -0.2;Europe/Gibraltar 36.1 -5.3;America/Nuuk 64.2 -51.7;America/Danmarkshavn 76.8 -18.7
America/Scoresbysund 70.5 -22;America/Thule 76.6 -68.8;Africa/Banjul 13.5 -16.6;Africa/Conakry 9.5 -13.7
America/Guadeloupe 16.2 -61.5;Africa/Malabo 3.8 8.8;Europe/Athens 38 23.7;Atlantic/South_Georgia -54.3 -36.5
America/Guatemala 14.6 -90.5;Pacific/Guam 13.5 144.8;Africa/Bissau 11.8 -15.6;America/Guyana 6.8 -58.2
Asia/Hong_Kong 22.3 114.2;America/Tegucigalpa 14.1 -87.2;Europe/Zagreb 45.8 16;America/Port-au-Prince 18.5 -72.3
Europe/Budapest 47.5 19.1;Asia/Jakarta -6.2 106.8;Asia/Pontianak -0 109.3;Asia/Makassar -5.1 119.4
Asia/Jayapura -2.5 140.7;Europe/Dublin 53.3 -6.2;Asia/Jerusalem 31.8 35.2;Europe/Isle_of_Man 54.1 -4.5
Asia/Kolkata 22.5 88.4;Indian/Chagos -7.3 72.4;Asia/Baghdad 33.4 44.4;Asia/Tehran 35.7 51.4
Atlantic/Reykjavik 64.2 -21.9;Europe/Rome 41.9 12.5;Europe/Jersey 49.2 -2.1;America/Jamaica 18 -76.8
Asia/Amman 31.9 35.9;Asia/Tokyo 35.6 139.7;Africa/Nairobi -1.3 36.8;Asia/Bishkek 42.9 74.6;Asia/Phnom_Penh 11.6 104.9
Pacific/Tarawa 1.4 173;Pacific/Kanton -2.8 -171.7;Pacific/Kiritimati 1.9 -157.3;Indian/Comoro -11.7 43.3
America/St_Kitts 17.3 -62.7;Asia/Pyongyang 39 125.8;Asia/Seoul 37.5 127;Asia/Kuwait 29.3 48;America/Cayman 19.3 -81.4
Asia/Almaty 43.2 77;Asia/Qyzylorda 44.8 65.5;Asia/Qostanay 53.2 63.6;Asia/Aqtobe 50.3 57.2;Asia/Aqtau 44.5 50.3
Asia/Atyrau 47.1 51.9;Asia/Oral 51.2 51.4;Asia/Vientiane 18 102.6;Asia/Beirut 33.9 35.5;America/St_Lucia 14 -61
Europe/Vaduz 47.1 9.5;Asia/Colombo 6.9 79.8;Africa/Monrovia 6.3 -10.8;Africa/Maseru -29.5 27.5
Europe/Vilnius 54.7 25.3;Europe/Luxembourg 49.6 6.2;Europe/Riga 57 24.1;Africa/Tripoli 32.9 13.2
Africa/Casablanca 33.6 -7.6;Europe/Monaco 43.7 7.4;Europe/Chisinau 47 28.8;Europe/Podgorica 42.4 19.3
America/Marigot 18.1 -63.1;Indian/Antananarivo -18.9 47.5;Pacific/Majuro 7.2 171.2;Pacific/Kwajalein 9.1 167.3
Europe/Skopje 42 21.4;Africa/Bamako 12.7 -8;Asia/Yangon 16.8 96.2;Asia/Ulaanbaatar 47.9 106.9;Asia/Hovd 48 91.7
Asia/Macau 22.2 113.5;Pacific/Saipan 15.2 145.8;America/Martinique 14.6 -61.1;Africa/Nouakchott 18.1 -15.9
America/Montserrat 16.7 -62.2;Europe/Malta 35.9 14.5;Indian/Mauritius -20.2 57.5;Indian/Maldives 4.2 73.5
Africa/Blantyre -15.8 35;America/Mexico_City 19.4 -99.2;America/Cancun 21.1 -86.8;America/Merida 21 -89.6
America/Monterrey 25.7 -100.3;America/Matamoros 25.8 -97.5;America/Chihuahua 28.6 -106.1
America/Ciudad_Juarez 31.7 -106.5;America/Ojinaga 29.6 -104.4;America/Mazatlan 23.2 -106.4
America/Bahia_Banderas 20.8 -105.2;America/Hermosillo 29.1 -111;America/Tijuana 32.5 -117;Asia/Kuala_Lumpur 3.2 101.7
Asia/Kuching 1.6 110.3;Africa/Maputo -26 32.6;Africa/Windhoek -22.6 17.1;Pacific/Noumea -22.3 166.4
Africa/Niamey 13.5 2.1;Pacific/Norfolk -29.1 168;Africa/Lagos 6.5 3.4;America/Managua 12.2 -86.3
Europe/Amsterdam 52.4 4.9;Europe/Oslo 59.9 10.8;Asia/Kathmandu 27.7 85.3;Pacific/Nauru -0.5 166.9
Pacific/Niue -19 -169.9;Pacific/Auckland -36.9 174.8;Pacific/Chatham -44 -176.6;Asia/Muscat 23.6 58.6
America/Panama 9 -79.5;America/Lima -12.1 -77;Pacific/Tahiti -17.5 -149.6;Pacific/Marquesas -9 -139.5
Pacific/Gambier -23.1 -134.9;Pacific/Port_Moresby -9.5 147.2;Pacific/Bougainville -6.2 155.6;Asia/Manila 14.6 121
Asia/Karachi 24.9 67;Europe/Warsaw 52.2 21;America/Miquelon 47 -56.3;Pacific/Pitcairn -25.1 -130.1
America/Puerto_Rico 18.5 -66.1;Asia/Gaza 31.5 34.5;Asia/Hebron 31.5 35.1;Europe/Lisbon 38.7 -9.1
Atlantic/Madeira 32.6 -16.9;Atlantic/Azores 37.7 -25.7;Pacific/Palau 7.3 134.5;America/Asuncion -25.3 -57.7
Asia/Qatar 25.3 51.5;Indian/Reunion -20.9 55.5;Europe/Bucharest 44.4 26.1;Europe/Belgrade 44.8 20.5
Europe/Kaliningrad 54.7 20.5;Europe/Moscow 55.8 37.6;Europe/Simferopol 45 34.1;Europe/Kirov 58.6 49.6
Europe/Volgograd 48.7 44.4;Europe/Astrakhan 46.4 48;Europe/Saratov 51.6 46;Europe/Ulyanovsk 54.3 48.4
Europe/Samara 53.2 50.1;Asia/Yekaterinburg 56.9 60.6;Asia/Omsk 55 73.4;Asia/Novosibirsk 55 82.9;Asia/Barnaul 53.4 83.8
Asia/Tomsk 56.5 85;Asia/Novokuznetsk 53.8 87.1;Asia/Krasnoyarsk 56 92.8;Asia/Irkutsk 52.3 104.3;Asia/Chita 52 113.5
Asia/Yakutsk 62 129.7;Asia/Khandyga 62.6 135.6;Asia/Vladivostok 43.2 131.9;Asia/Ust-Nera 64.5 143.2
Asia/Magadan 59.6 150.8;Asia/Sakhalin 47 142.7;Asia/Srednekolymsk 67.5 153.7;Asia/Kamchatka 53 158.7
Asia/Anadyr 64.8 177.5;Africa/Kigali -1.9 30.1;Asia/Riyadh 24.6 46.7;Pacific/Guadalcanal -9.5 160.2
Indian/Mahe -4.7 55.5;Africa/Khartoum 15.6 32.5;Europe/Stockholm 59.3 18.1;Asia/Singapore 1.3 103.8
Atlantic/St_Helena -15.9 -5.7;Europe/Ljubljana 46 14.5;Arctic/Longyearbyen 78 16;Europe/Bratislava 48.1 17.1
Africa/Freetown 8.5 -13.2;Europe/San_Marino 43.9 12.5;Africa/Dakar 14.7 -17.4;Africa/Mogadishu 2.1 45.4
America/Paramaribo 5.8 -55.2;Africa/Juba 4.8 31.6;Africa/Sao_Tome 0.3 6.7;America/El_Salvador 13.7 -89.2
America/Lower_Princes 18.1 -63;Asia/Damascus 33.5 36.3;Africa/Mbabane -26.3 31.1;America/Grand_Turk 21.5 -71.1
Africa/Ndjamena 12.1 15.1;Indian/Kerguelen -49.4 70.2;Africa/Lome 6.1 1.2;Asia/Bangkok 13.8 100.5
Asia/Dushanbe 38.6 68.8;Pacific/Fakaofo -9.4 -171.2;Asia/Dili -8.6 125.6;Asia/Ashgabat 38 58.4;Africa/Tunis 36.8 10.2
Pacific/Tongatapu -21.1 -175.2;Europe/Istanbul 41 29;America/Port_of_Spain 10.7 -61.5;Pacific/Funafuti -8.5 179.2
Asia/Taipei 25.1 121.5;Africa/Dar_es_Salaam -6.8 39.3;Europe/Kyiv 50.4 30.5;Africa/Kampala 0.3 32.4
Pacific/Midway 28.2 -177.4;Pacific/Wake 19.3 166.6;America/New_York 40.7 -74;America/Detroit 42.3 -83
America/Kentucky/Louisville 38.2 -85.8;America/Kentucky/Monticello 36.8 -84.8;America/Indiana/Indianapolis 39.8 -86.2
America/Indiana/Vincennes 38.7 -87.5;America/Indiana/Winamac 41 -86.6;America/Indiana/Marengo 38.4 -86.3
America/Indiana/Petersburg 38.5 -87.3;America/Indiana/Vevay 38.7 -85.1;America/Chicago 41.9 -87.7
America/Indiana/Tell_City 38 -86.8;America/Indiana/Knox 41.3 -86.6;America/Menominee 45.1 -87.6
America/North_Dakota/Center 47.1 -101.3;America/North_Dakota/New_Salem 46.8 -101.4
America/North_Dakota/Beulah 47.2 -101.8;America/Denver 39.7 -105;America/Boise 43.6 -116.2;America/Phoenix 33.4 -112.1
America/Los_Angeles 34 -118.2;America/Anchorage 61.2 -149.9;America/Juneau 58.3 -134.4;America/Sitka 57.2 -135.3
America/Metlakatla 55.1 -131.6;America/Yakutat 59.5 -139.7;America/Nome 64.5 -165.4;America/Adak 51.9 -176.7
Pacific/Honolulu 21.3 -157.8;America/Montevideo -34.9 -56.2;Asia/Samarkand 39.7 66.8;Asia/Tashkent 41.3 69.3
Europe/Vatican 41.9 12.4;America/St_Vincent 13.2 -61.2;America/Caracas 10.5 -66.9;America/Tortola 18.4 -64.6
America/St_Thomas 18.4 -64.9;Asia/Ho_Chi_Minh 10.8 106.7;Pacific/Efate -17.7 168.4;Pacific/Wallis -13.3 -176.2
Pacific/Apia -13.8 -171.7;Asia/Aden 12.8 45.2;Indian/Mayotte -12.8 45.2;Africa/Johannesburg -26.2 28
Africa/Lusaka -15.4 28.3;Africa/Harare -17.8 31.1
`;

export type ZoneTown = { readonly zone: string; readonly lat: number; readonly lon: number };

/** Some 400 towns all over the world: enough to see where on it a point lies. */
export const zoneTowns: readonly ZoneTown[] = table
  .trim()
  .split(/[;\n]/)
  .map((row) => {
    const [zone = '', lat, lon] = row.split(' ');
    return { zone, lat: Number(lat), lon: Number(lon) };
  });

const RADIAN = Math.PI / 180;
const EARTH = 6371; // km, mean radius

/** Along the great circle, km. */
export function kilometresBetween(
  a: Pick<ZoneTown, 'lat' | 'lon'>,
  b: Pick<ZoneTown, 'lat' | 'lon'>,
): number {
  const half = (from: number, to: number) => Math.sin(((to - from) * RADIAN) / 2) ** 2;
  const chord =
    half(a.lat, b.lat) + Math.cos(a.lat * RADIAN) * Math.cos(b.lat * RADIAN) * half(a.lon, b.lon);
  return 2 * EARTH * Math.asin(Math.min(1, Math.sqrt(chord)));
}
