//! Names, from our own lists. Nothing else about a patient is drawn from the same stream, and the
//! lists differ in nothing but their names: a test holds that age, sex, habits and history do not
//! follow them.

use super::draw::Stream;
use crate::chart::Sex;

/// Given names (women, men) and family names that go together.
pub(super) struct List {
    pub women: [&'static str; 6],
    pub men: [&'static str; 6],
    pub families: [&'static str; 6],
}

pub(super) const LISTS: [List; 10] = [
    List {
        women: ["Ada", "Elin", "Karin", "Maja", "Signe", "Tove"],
        men: ["Anders", "Emil", "Johan", "Lars", "Nils", "Oskar"],
        families: ["Lindqvist", "Berg", "Dahl", "Nyman", "Holm", "Sandberg"],
    },
    List {
        women: ["Amina", "Fatou", "Khady", "Mariam", "Ndeye", "Sokhna"],
        men: ["Cheikh", "Ibrahima", "Lamine", "Modou", "Ousmane", "Souleymane"],
        families: ["Diallo", "Ndiaye", "Sow", "Faye", "Gueye", "Sarr"],
    },
    List {
        women: ["Anjali", "Deepa", "Kavita", "Meera", "Priya", "Sunita"],
        men: ["Arjun", "Dev", "Kiran", "Manoj", "Rohan", "Vikram"],
        families: ["Rao", "Iyer", "Mehta", "Nair", "Joshi", "Bose"],
    },
    List {
        women: ["Camila", "Elena", "Ines", "Lucia", "Paloma", "Rosa"],
        men: ["Alvaro", "Diego", "Hugo", "Mateo", "Rafael", "Tomas"],
        families: ["Vega", "Ortiz", "Navarro", "Molina", "Castillo", "Rivas"],
    },
    List {
        women: ["Aiko", "Emi", "Haruka", "Mika", "Naoko", "Yui"],
        men: ["Daichi", "Haruto", "Kenji", "Ryo", "Takumi", "Yuto"],
        families: ["Mori", "Tanabe", "Hayashi", "Okada", "Kimura", "Ueda"],
    },
    List {
        women: ["Dalia", "Hala", "Leila", "Nour", "Rania", "Samira"],
        men: ["Adel", "Bassam", "Faris", "Karim", "Omar", "Tarek"],
        families: ["Haddad", "Mansour", "Nasser", "Salem", "Khoury", "Aziz"],
    },
    List {
        women: ["Agnieszka", "Dorota", "Hanna", "Katarzyna", "Magda", "Zofia"],
        men: ["Jakub", "Krzysztof", "Marek", "Pawel", "Tomasz", "Wojciech"],
        families: ["Kowal", "Nowak", "Mazur", "Wilk", "Zajac", "Dudek"],
    },
    List {
        women: ["Bridget", "Clare", "Fiona", "Grace", "Maeve", "Siobhan"],
        men: ["Aidan", "Brendan", "Colin", "Declan", "Owen", "Rory"],
        families: ["Byrne", "Doyle", "Keane", "Lynch", "Nolan", "Quinn"],
    },
    List {
        women: ["Chun", "Jia", "Lan", "Mei", "Xue", "Ying"],
        men: ["Bo", "Feng", "Jun", "Lei", "Ming", "Wei"],
        families: ["Chen", "Guo", "Lin", "Song", "Xu", "Zhou"],
    },
    List {
        women: ["Abena", "Chioma", "Efua", "Ngozi", "Temi", "Yaa"],
        men: ["Chidi", "Emeka", "Kofi", "Kwame", "Obi", "Tunde"],
        families: ["Adeyemi", "Boateng", "Eze", "Mensah", "Okafor", "Owusu"],
    },
];

/// A name for this sex.
pub(super) fn draw(stream: &mut Stream, sex: Sex) -> String {
    let list = usize::try_from(stream.whole(LISTS.len() as u64)).ok();
    let Some(list) = list.and_then(|place| LISTS.get(place)) else { return String::new() };
    let given = match sex {
        Sex::Female => stream.pick(&list.women, list.women[0]),
        Sex::Male => stream.pick(&list.men, list.men[0]),
    };
    format!("{given} {}", stream.pick(&list.families, list.families[0]))
}
